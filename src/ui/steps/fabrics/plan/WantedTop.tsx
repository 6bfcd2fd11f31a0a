// The top to plan for: a number of blocks, or a size, with the tops that come near that size.
import { useId, useMemo } from 'react';
import { type SizeOffer, sizeOffers } from '../../../../cutting/top/sizeOffers';
import { type TopSize, topSize } from '../../../../cutting/top/topSize';
import { layOut } from '../../../../geometry/setting';
import { wedgeProblem } from '../../../../geometry/wedge';
import { counted } from '../../../../model/phrase';
import type { Project } from '../../../../model/project';
import type { Inches } from '../../../../model/units';
import { rowWords } from '../../../../model/words/rowWords';
import { useApp } from '../../../app';
import { Choice } from '../../../fields/Choice';
import { CountField } from '../../../fields/CountField';
import { Fractions } from '../../../fields/Fractions';
import { LengthField } from '../../../fields/LengthField';
import { useSay } from '../../../words';
import { frameWords, sizeWords, withOffer } from '../../wall/setting/offerWords';

const MOST_BLOCKS = 400;
const LEAST_SIZE: Inches = 6;
const MOST_SIZE: Inches = 160;

/** The wish: a number of blocks or a size; null: the present quilt. */
export type TopWish =
  | { readonly by: 'blocks'; readonly blocks: number | null }
  | { readonly by: 'size'; readonly size: { width: Inches; height: Inches } | null; readonly taken: number };

/** The top for a wish: the number of blocks, and the quilt and its size where one is known. */
export interface Wanted {
  readonly blocks: number;
  readonly project: Project;
  readonly size: TopSize | null;
}

/** The top for a wish; null where no top comes near the wanted size. */
export function wantedTop(project: Project, wish: TopWish): Wanted | null {
  if (wish.by === 'blocks') {
    const blocks = wish.blocks ?? Math.min(MOST_BLOCKS, project.wall.cells.length);
    return { blocks, project, size: topSize(project, blocks) };
  }
  const offer = offersFor(project, wish)[wish.taken];
  if (!offer) return null;
  const { rows, columns, blocks, width, height } = offer;
  return { blocks, project: withOffer(project, offer), size: { rows, columns, blocks, width, height } };
}

type SizeWish = Extract<TopWish, { by: 'size' }>;

function offersFor(project: Project, { size }: SizeWish): SizeOffer[] {
  if (wedgeProblem(project.wedge)) return [];
  return sizeOffers(project, size ?? sizeNow(project)).filter((offer) => offer.blocks <= MOST_BLOCKS);
}

function sizeNow(project: Project): { width: Inches; height: Inches } {
  const { width, height } = layOut(project);
  return { width: Math.round(width), height: Math.round(height) };
}

interface Props {
  wish: TopWish;
  onChange: (wish: TopWish) => void;
}

export function WantedTop({ wish, onChange }: Props) {
  const project = useApp((app) => app.project);
  return (
    <>
      <Choice
        label="Plan for"
        value={wish.by}
        options={[
          { value: 'blocks', label: 'Blocks' },
          { value: 'size', label: 'A size' },
        ]}
        onChange={(by) => onChange(by === 'blocks' ? { by, blocks: null } : { by, size: null, taken: 0 })}
      />
      {wish.by === 'blocks' ? (
        <CountField
          label="Number of blocks"
          value={wish.blocks ?? Math.min(MOST_BLOCKS, project.wall.cells.length)}
          least={1}
          most={MOST_BLOCKS}
          onCommit={(blocks) => {
            onChange({ by: 'blocks', blocks });
            return [];
          }}
        />
      ) : (
        <AboutSoLarge wish={wish} onChange={onChange} />
      )}
    </>
  );
}

function AboutSoLarge({ wish, onChange }: { wish: SizeWish; onChange: (wish: TopWish) => void }) {
  const say = useSay();
  const name = useId();
  const project = useApp((app) => app.project);
  const offers = useMemo(() => offersFor(project, wish), [project, wish]);
  if (wedgeProblem(project.wedge)) return <p>{say('The planned wedge makes no block.')}</p>;
  const size = wish.size ?? sizeNow(project);
  const take = (change: Partial<typeof size>) => {
    onChange({ by: 'size', size: { ...size, ...change }, taken: 0 });
    return [];
  };
  return (
    <>
      <div className="fab-three">
        <LengthField
          label="Width"
          value={size.width}
          least={LEAST_SIZE}
          most={MOST_SIZE}
          onCommit={(width) => take({ width })}
        />
        <LengthField
          label="Height"
          value={size.height}
          least={LEAST_SIZE}
          most={MOST_SIZE}
          onCommit={(height) => take({ height })}
        />
      </div>
      {offers.length === 0 ? (
        <p>{say('These blocks make no top within half a block of that size.')}</p>
      ) : (
        <fieldset className="onhand-offers">
          <legend className="quiet">{say('Ways to get close to it')}</legend>
          {offers.map((offer, at) => (
            <label key={`${offer.rows} ${offer.columns} ${offer.sashing.where}`} className="check">
              <input
                type="radio"
                name={name}
                checked={at === wish.taken}
                onChange={() => onChange({ ...wish, taken: at })}
              />
              <span>
                <Fractions text={say(sizeWords(offer))} />
                <span className="quiet">
                  <Fractions
                    text={`${say(rowWords(offer))}, ${say(counted(offer.blocks, '1 block', '{count} blocks'))}; ${say(frameWords(offer))}`}
                  />
                </span>
              </span>
            </label>
          ))}
        </fieldset>
      )}
    </>
  );
}
