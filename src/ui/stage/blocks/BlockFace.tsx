// A block large enough to work on: its cloth as it hangs, numbered places, an arrow for the pressing of each wedge's seams, and
// marks of clashes. Places are chosen by click, Tab and arrows; wedges are carried by hand.
import { type CSSProperties, type KeyboardEvent, type ReactNode, useMemo } from 'react';
import type { Clash } from '../../../balance/clashes/clashes';
import { seamLies, seamsNotNesting } from '../../../cutting/wedges/nesting';
import { drawBlock } from '../../../drawing/drawProject';
import { finishedBlock } from '../../../geometry/wedge';
import { orientation, turnsOf } from '../../../model/find';
import type { Phrase } from '../../../model/phrase';
import type { Block, Place, Project } from '../../../model/project';
import { useApp } from '../../app';
import { isKey } from '../../keys';
import { shownWords, wedgeWords } from '../../steps/blocks/blockWords';
import { samePlace, useTrading } from '../../steps/blocks/workshop/trade';
import { BlockView } from '../../wall/BlockView';
import { SeamMarks } from '../../wall/marks/Marks';
import { useSay } from '../../words';
import { NotNesting, PlaceFace } from './PlaceFace';

interface Props {
  block: Block;
  /** The turn with which it hangs. */
  turn: number;
  clashes: readonly Clash[];
  chosen: number | null;
  onChoose: (place: number) => void;
  /** A wedge shown in a place instead of the wedge there; the place keeps the name of the wedge there. */
  trying?: { readonly place: number; readonly wedge: Place } | null;
  onEmpty?: (place: number) => void;
  /** What is drawn round it, and how much of it is shown on each side. */
  around?: ReactNode;
  margins?: Margins;
  /** What is drawn on its edge. */
  onEdge?: ReactNode;
}

/** Inches shown beyond the block on each side. */
export interface Margins {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly foot: number;
}

const NARROW: Margins = { left: 0.1, right: 0.1, top: 0.1, foot: 0.1 };

export function BlockFace({
  block,
  turn,
  clashes,
  chosen,
  onChoose,
  trying,
  onEmpty,
  around,
  margins = NARROW,
  onEdge,
}: Props) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const { held, carried, hold, press, putDown } = useTrading();
  const { perBlock } = project.wedge;
  const { width, height } = finishedBlock(project.wedge);
  const shown = useMemo(() => {
    if (!trying || block.kind === 'pictured') return block;
    return { ...block, places: block.places.with(trying.place, trying.wedge) };
  }, [block, trying]);
  const pieces = useMemo(() => drawBlock(project, shown), [project, shown]);
  const lies = useMemo(() => seamLies(project, shown), [project, shown]);
  const slips = useMemo(() => seamsNotNesting(project, shown), [project, shown]);
  const wide = width + margins.left + margins.right;
  const tall = height + margins.top + margins.foot;
  const stands = orientation(block, turn, project.wedge);
  const marks = trying ? [] : clashes.filter((clash) => clash.kind === 'rim').flatMap((clash) => clash.marks);
  const focusable = chosen ?? 0;

  const key = (event: KeyboardEvent, place: number) => {
    const step = isKey(event, 'placeOn') ? 1 : isKey(event, 'placeBack') ? -1 : 0;
    if (step !== 0) {
      const next = (place + step + perBlock) % perBlock;
      const group = event.currentTarget.parentElement;
      onChoose(next);
      group?.querySelector<SVGElement>(`[data-workshop-place="${next}"]`)?.focus();
    } else if (isKey(event, 'placeTake')) {
      if (held) putDown(held, { block: block.id, place });
      else onChoose(place);
    } else if (isKey(event, 'placeHold')) {
      hold(samePlace(held, { block: block.id, place }) ? null : { block: block.id, place });
    } else if (isKey(event, 'placeEmpty')) onEmpty?.(place);
    else return;
    event.preventDefault();
  };

  return (
    <div role="radiogroup" aria-label={say('Places of block {block}', { block: block.number })}>
      {/* biome-ignore lint/a11y/noSvgWithoutTitle: its places are named one by one */}
      <svg
        className="block-face"
        viewBox={`${-width / 2 - margins.left} ${-height / 2 - margins.top} ${wide} ${tall}`}
        style={{ '--ratio': wide / tall } as CSSProperties}
      >
        {around}
        <g transform={`rotate(${(turn * 360) / turnsOf(perBlock)})`} aria-hidden>
          <BlockView pieces={pieces} fabrics={project.fabrics} lit={null} near />
          <SeamMarks marks={marks} strong={false} />
        </g>
        {onEdge}
        <NotNesting seams={slips} stands={stands} wedge={project.wedge} />
        {placeNames(project, block).map((name, place) => {
          const ref = { block: block.id, place };
          return (
            <PlaceFace
              // biome-ignore lint/suspicious/noArrayIndexKey: a place is its index
              key={place}
              place={place}
              block={block.id}
              toward={place + stands}
              lie={lies[place] ?? null}
              label={say('Place {place}: {wedge}', { place: place + 1, wedge: name })}
              chosen={chosen === place}
              tabbable={focusable === place}
              held={samePlace(held, ref) || samePlace(carried?.from, ref)}
              over={carried !== null && samePlace(carried.over, ref) && !samePlace(carried.from, ref)}
              onPress={(event) => press(event, ref)}
              onClick={() => (held ? putDown(held, ref) : onChoose(place))}
              onKeyDown={(event) => key(event, place)}
            />
          );
        })}
      </svg>
    </div>
  );
}

/** What is in each place: its wedge, or what the picture of the block shows there. */
function placeNames(project: Project, block: Block): Phrase[] {
  return block.kind === 'pictured'
    ? block.wedges.map((wedge) => shownWords(project, wedge))
    : block.places.map((wedge) => wedgeWords(project, wedge));
}
