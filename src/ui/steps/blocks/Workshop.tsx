// The workshop of the picked block: its places, the wedges that could lie in them, its corners, how far it is sewn.
import { ArrowLeft, ChevronLeft, ChevronRight, Trash2 } from 'lucide-react';
import { useState } from 'react';
import type { Clash } from '../../../balance/clashes';
import { clashWords } from '../../../balance/clashFindings';
import { seamsNotNesting } from '../../../cutting/nesting';
import { emptyBlocks, putWedge, removeBlock } from '../../../editing/blocks';
import { cellIndexOf, cellOf } from '../../../model/find';
import { placesHeld } from '../../../model/freedom';
import type { Block, BlockId, Place } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';
import { Caution } from '../Caution';
import { BlockFace } from './BlockFace';
import { BlockSheet } from './BlockSheet';
import { CornersOfBlock } from './CornersOfBlock';
import { HowFar } from './HowFar';
import { PlacePanel } from './PlacePanel';
import { SecondBlock } from './SecondBlock';
import { TradeBar } from './TradeBar';
import './workshop.css';

interface Props {
  block: Block;
  clashes: ReadonlyMap<BlockId, readonly Clash[]>;
}

export function Workshop({ block, clashes }: Props) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const [chosen, setChosen] = useState(0);
  const [trying, setTrying] = useState<Place | null>(null);
  const place = Math.min(chosen, block.places.length - 1);
  const mine = clashes.get(block.id) ?? [];
  const sewn = placesHeld(block);
  const filled = block.places.some((one) => one !== null);
  const slips = seamsNotNesting(project, block);
  return (
    <div className="workshop">
      <WorkshopHead block={block} />
      <BlockFace
        block={block}
        turn={cellOf(project, block.id)?.turn ?? 0}
        clashes={mine}
        chosen={place}
        onChoose={setChosen}
        trying={trying ? { place, wedge: trying } : null}
        onEmpty={(at) => run(putWedge(store.getState().project, block.id, at, null))}
      />
      <p className="quiet legend">
        {say('An arrow shows the way a wedge’s seams are pressed; opposite arrows nest.')}
      </p>
      <TradeBar />
      {slips.length > 0 ? (
        <p className="verdict">
          {say('Between places {places} the seams are pressed the same way and do not nest.', {
            places: { list: slips.map(([one, next]) => `${one + 1}–${next + 1}`) },
          })}
        </p>
      ) : null}
      <PlacePanel block={block} place={place} onTry={setTrying} />
      <SecondBlock block={block} clashes={clashes} />
      <Meetings clashes={mine} complete={!block.places.includes(null)} />
      <CornersOfBlock block={block} />
      <section aria-labelledby="far-title">
        <h3 id="far-title">{say('How far it is')}</h3>
        <HowFar blocks={[block.id]} stage={block.progress} />
      </section>
      <BlockSheet block={block} turn={cellOf(project, block.id)?.turn ?? 0} />
      <section aria-label={say('Clear or remove')}>
        <div className="row">
          {filled ? (
            <button
              type="button"
              className="button"
              disabled={sewn !== null}
              onClick={() => run(emptyBlocks(store.getState().project, [block.id]))}
            >
              {say('Empty all its places')}
            </button>
          ) : null}
          <button
            type="button"
            className="button"
            onClick={() => run(removeBlock(store.getState().project, block.id))}
          >
            <Trash2 size={16} aria-hidden /> {say('Remove block {block}', { block: block.number })}
          </button>
        </div>
        <Complaint problems={problems} />
      </section>
      <SewingAdvice />
    </div>
  );
}

function WorkshopHead({ block }: { block: Block }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const cell = cellIndexOf(project, block.id);
  const { columns } = project.wall;
  const ordered = project.blocks.toSorted((one, other) => one.number - other.number);
  const at = ordered.findIndex((one) => one.id === block.id);
  const step = (by: number, name: string, icon: React.ReactNode) => (
    <button
      type="button"
      className="button bare"
      aria-label={name}
      title={name}
      disabled={ordered[at + by] === undefined}
      onClick={() => store.getState().pick(ordered[at + by]?.id ?? null)}
    >
      {icon}
    </button>
  );
  return (
    <header className="workshop-head">
      <button type="button" className="button bare back" onClick={() => store.getState().pick(null)}>
        <ArrowLeft size={16} aria-hidden /> {say('All blocks')}
      </button>
      <div className="spread">
        <div>
          <h2>{say('Block {block}', { block: block.number })}</h2>
          <p>
            {cell < 0
              ? say('On the side table')
              : say('Row {row}, column {column}', {
                  row: Math.floor(cell / columns) + 1,
                  column: (cell % columns) + 1,
                })}
          </p>
        </div>
        <div className="row">
          {step(-1, say('The block before'), <ChevronLeft size={18} aria-hidden />)}
          {step(1, say('The next block'), <ChevronRight size={18} aria-hidden />)}
        </div>
      </div>
    </header>
  );
}

function Meetings({ clashes, complete }: { clashes: readonly Clash[]; complete: boolean }) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const rims = clashes.filter((clash) => clash.kind === 'rim');
  const inside = clashes.filter((clash) => clash.kind !== 'rim');
  return (
    <section aria-labelledby="meet-title">
      <h3 id="meet-title">{say('What meets in it')}</h3>
      {rims.length === 0 ? (
        <p>
          {complete
            ? say('No fabric meets itself on the rim.')
            : say('No fabric meets itself on the rim so far.')}
        </p>
      ) : (
        <ul className="marked">
          {rims.map((clash) => (
            <li key={clash.id}>
              <Fractions text={say(clashWords(project, clash))} />
            </li>
          ))}
        </ul>
      )}
      {inside.length > 0 ? (
        <details className="fold">
          <summary>
            <Fractions
              text={say('Further in: {count}, {length} in all', {
                count: inside.length,
                length: { inches: inside.reduce((sum, one) => sum + one.inches, 0) },
              })}
            />
          </summary>
          <ul>
            {inside.map((clash) => (
              <li key={clash.id}>
                <Fractions text={say(clashWords(project, clash))} />
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </section>
  );
}

/** Common practice, no source. */
function SewingAdvice() {
  const say = useSay();
  return (
    <section aria-labelledby="sew-title">
      <h3 id="sew-title">{say('Sewing it')}</h3>
      <ol className="advice">
        <li>
          {say(
            'Lay the wedges out in their places. Join them in pairs, the pairs into halves, the halves into the block.',
          )}
        </li>
        <li>{say('Let each pair of seams nest, pin there, and sew from the rim to the middle.')}</li>
        <li>{say('Ease the last seam where all points meet: pin the middle first, then outwards.')}</li>
        <li>{say('The edges are cut on the bias: press them down, never pull or slide.')}</li>
        <li>{say('Sew one block and measure it before you sew the rest.')}</li>
      </ol>
      <Caution about={['sewing', 'pressing']} />
    </section>
  );
}
