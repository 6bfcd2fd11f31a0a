// The layer of the top: all that is of fabric, seen in the chosen way; over it empty cells, blocks to press, and marks. It is apart from the layer of the hand, so that
// carrying one of 400 blocks draws none of the others again.

import { memo, type PointerEvent, useMemo } from 'react';
import type { Finding, Mark } from '../../balance/finding';
import type { Drawing } from '../../drawing/drawing';
import type { Box } from '../../geometry/point';
import type { BlockId, Fabric, FabricId, Project } from '../../model/project';
import { rowAndColumn } from '../../model/wallCells';
import type { Balance } from '../../store/analysis/analysis';
import { later } from '../later';
import { Shown } from '../Shown';
import { useSay } from '../words';
import { TopCloth } from './early/TopCloth';
import { FIRST, PART } from './growing/parts';
import { useParts } from './growing/useParts';
import { HungBlockView, Ring } from './HungBlockView';
import { PoolMarks, SeamMarks } from './marks/Marks';
import { clashesToTell } from './standing/clashesToTell';
import { hungNames } from './standing/hungWords';

const SPOT_MARKS = later(async () => (await import('./marks/SpotMarks')).SpotMarks);
const NO_MARKS: readonly Mark[] = [];

export interface TopLayerProps {
  drawing: Drawing;
  fabrics: readonly Fabric[];
  /** The quilt that is drawn, for the rows and columns of its cells. */
  hanging: Project;
  findings: readonly Finding[];
  /** Its balance or that of a state before it, for the names of the blocks; null where none is known. */
  balance: Balance | null;
  /** The finding whose marks are shown strongest. */
  chosen: string | null;
  /** Marks of the spot that is shown instead; null for none. */
  spot: readonly Mark[] | null;
  picked: BlockId | null;
  /** The cell that the keyboard is on. */
  focused: number;
  lit: FabricId | null;
  near: boolean;
  number: boolean;
  /** Blocks whose numbers are shown in any case. */
  numbered: ReadonlySet<BlockId>;
  onPress: (event: PointerEvent, cell: number) => void;
  onFocus: (cell: number) => void;
}

export const TopLayer = memo(function TopLayer(props: TopLayerProps) {
  const say = useSay();
  const { drawing, fabrics, hanging, balance, findings, chosen, spot, lit } = props;
  const nameOf = useMemo(() => hungNames(say), [say]);
  const marks = useMemo(() => marksByBlock(findings, chosen, spot), [findings, chosen, spot]);
  // In order of numbers on a wall that is drawn in parts, so that an exchange only moves blocks on screen and no element is removed and added.
  const inOrder = useMemo(
    () =>
      drawing.blocks.length > FIRST
        ? drawing.blocks.toSorted((one, other) => one.number - other.number)
        : drawing.blocks,
    [drawing],
  );
  const there = useParts(inOrder, hanging.id, PART);
  // Of a wall that is drawn before the page all is there at once.
  const cloth = useParts(inOrder, hanging.id, inOrder.length > FIRST ? PART : FIRST);
  const clashes = useMemo(() => clashesToTell(balance, hanging), [balance, hanging]);
  return (
    <>
      <TopCloth drawing={drawing} blocks={cloth} fabrics={fabrics} lit={lit} near={props.near} />
      {drawing.emptyCells.map(({ cell, box }) => (
        <EmptyCell
          key={`empty ${cell}`}
          cell={cell}
          box={box}
          tilt={drawing.tilt}
          label={say('Empty cell, row {row}, column {column}', rowAndColumn(cell, hanging))}
          tabbable={props.focused === cell}
          onPress={props.onPress}
          onFocus={props.onFocus}
        />
      ))}
      {there.map((hung) => (
        <HungBlockView
          key={hung.block}
          hung={hung}
          width={drawing.block.width}
          height={drawing.block.height}
          label={nameOf(hung, hanging, clashes(hung.block))}
          picked={hung.block === props.picked}
          tabbable={hung.cell === props.focused}
          number={props.number || props.numbered.has(hung.block)}
          marks={marks.soft.get(hung.block) ?? NO_MARKS}
          strongMarks={marks.strong.get(hung.block) ?? NO_MARKS}
          onPress={props.onPress}
          onFocus={props.onFocus}
        />
      ))}
      {isAlone(marks.quiltStrong) ? (
        <Shown part={SPOT_MARKS} given={{ marks: marks.quiltStrong, drawing }} />
      ) : null}
      <SeamMarks marks={marks.quiltSoft} strong={false} />
      <SeamMarks marks={marks.quiltStrong} strong />
      <PoolMarks marks={marks.quiltSoft} strong={false} />
      <PoolMarks marks={marks.quiltStrong} strong />
    </>
  );
});

interface EmptyCellProps {
  cell: number;
  box: Box;
  tilt: number;
  label: string;
  tabbable: boolean;
  onPress: (event: PointerEvent, cell: number) => void;
  onFocus: (cell: number) => void;
}

function EmptyCell({ cell, box, tilt, label, tabbable, onPress, onFocus }: EmptyCellProps) {
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const inset = 0.3;
  const inner = {
    x: box.x + inset,
    y: box.y + inset,
    width: box.width - 2 * inset,
    height: box.height - 2 * inset,
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: an SVG group cannot be a <button>
    <g
      role="button"
      tabIndex={tabbable ? 0 : -1}
      aria-label={label}
      className="empty"
      data-cell={cell}
      transform={tilt === 0 ? undefined : `rotate(${tilt} ${middle.x} ${middle.y})`}
      onFocus={() => onFocus(cell)}
      onPointerDown={(event) => onPress(event, cell)}
    >
      <rect {...inner} className="empty-cell" />
      <g className="focus-ring" transform={`translate(${middle.x} ${middle.y})`}>
        <Ring width={inner.width} height={inner.height} className="stitch-solid" />
      </g>
    </g>
  );
}

/** Whether there is a centre of weight or a lit wedge, which are marked alone. */
function isAlone(marks: readonly Mark[]): boolean {
  return marks.some(({ kind }) => kind === 'centre' || kind === 'light');
}

/** The marks of findings by block, with those of the chosen finding apart. */
function marksByBlock(findings: readonly Finding[], chosen: string | null, spot: readonly Mark[] | null) {
  const soft = new Map<BlockId, Mark[]>();
  const strong = new Map<BlockId, Mark[]>();
  const quiltSoft: Mark[] = [];
  const quiltStrong: Mark[] = [];
  // With a centre of weight or lit wedges, no clashes are marked: they would distract from them.
  const kept = spot && isAlone(spot) ? [] : findings;
  const sorted = kept.map(({ id, marks }) => ({ marks, isChosen: spot === null && id === chosen }));
  for (const { marks, isChosen } of [...sorted, { marks: spot ?? NO_MARKS, isChosen: true }]) {
    for (const mark of marks) {
      if (mark.kind !== 'seam' || mark.block === null) {
        (isChosen ? quiltStrong : quiltSoft).push(mark);
        continue;
      }
      const into = isChosen ? strong : soft;
      const list = into.get(mark.block);
      if (list) list.push(mark);
      else into.set(mark.block, [mark]);
    }
  }
  return { soft, strong, quiltSoft, quiltStrong };
}
