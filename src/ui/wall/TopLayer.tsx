// The top itself: sashing and borders, empty cells, blocks, and the marks on them. Kept apart from the moving hand, so that
// carrying one of 400 blocks draws none of the others again.
import { memo, type PointerEvent, useMemo } from 'react';
import type { Finding, Mark } from '../../balance/finding';
import { mergedPaths } from '../../drawing/blockPaths';
import type { Drawing } from '../../drawing/drawing';
import { type Box, boxOutline, type Outline } from '../../geometry/point';
import type { BlockId, Fabric, FabricId } from '../../model/project';
import { useSay } from '../words';
import { HungBlockView, Ring } from './HungBlockView';
import { PoolMarks, SeamMarks } from './Marks';

const NO_MARKS: readonly Mark[] = [];

export interface TopLayerProps {
  drawing: Drawing;
  fabrics: readonly Fabric[];
  columns: number;
  findings: readonly Finding[];
  /** The finding whose marks are shown strongest. */
  chosen: string | null;
  picked: BlockId | null;
  /** The cell the keyboard is on. */
  focused: number;
  lit: FabricId | null;
  near: boolean;
  number: boolean;
  /** Block left behind by the hand that carries it. */
  faded: BlockId | null;
  twisted: BlockId | null;
  twist: number;
  over: number | null;
  onPress: (event: PointerEvent, cell: number) => void;
  onFocus: (cell: number) => void;
}

export const TopLayer = memo(function TopLayer(props: TopLayerProps) {
  const say = useSay();
  const { drawing, fabrics, columns, findings, chosen, lit } = props;
  const marks = useMemo(() => marksByBlock(findings, chosen), [findings, chosen]);
  const surround = useMemo(() => mergedPaths(drawing.surround, fabrics), [drawing, fabrics]);
  const name = (cell: number, block?: number, pinned?: boolean) => {
    const values = { row: Math.floor(cell / columns) + 1, column: (cell % columns) + 1, block: block ?? 0 };
    if (block === undefined) return say('Empty cell, row {row}, column {column}', values);
    return pinned
      ? say('Block {block}, row {row}, column {column}, pinned', values)
      : say('Block {block}, row {row}, column {column}', values);
  };
  return (
    <>
      <rect x={0.25} y={0.35} width={drawing.width} height={drawing.height} className="cloth-shadow" />
      {surround.map(({ fabric, fill, d }) => (
        <path
          key={`${fabric} ${fill}`}
          d={d}
          fill={fill || 'none'}
          opacity={lit !== null && lit !== fabric ? 0.13 : 1}
        />
      ))}
      {drawing.surround.map(({ outline }) => (
        <polygon key={pointsOf(outline)} points={pointsOf(outline)} className="seams" />
      ))}
      {drawing.emptyCells.map(({ cell, box }) => (
        <EmptyCell
          key={`empty ${cell}`}
          cell={cell}
          box={box}
          label={name(cell)}
          over={props.over === cell}
          tabbable={props.focused === cell}
          onPress={props.onPress}
          onFocus={props.onFocus}
        />
      ))}
      {drawing.blocks.map((hung) => (
        <HungBlockView
          key={hung.block}
          hung={hung}
          width={drawing.block.width}
          height={drawing.block.height}
          fabrics={fabrics}
          label={name(hung.cell, hung.number, hung.pinned)}
          picked={hung.block === props.picked}
          tabbable={hung.cell === props.focused}
          lit={lit}
          near={props.near}
          number={props.number}
          marks={marks.soft.get(hung.block) ?? NO_MARKS}
          strongMarks={marks.strong.get(hung.block) ?? NO_MARKS}
          twist={props.twisted === hung.block ? props.twist : 0}
          faded={props.faded === hung.block}
          onPress={props.onPress}
          onFocus={props.onFocus}
        />
      ))}
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
  label: string;
  over: boolean;
  tabbable: boolean;
  onPress: (event: PointerEvent, cell: number) => void;
  onFocus: (cell: number) => void;
}

function EmptyCell({ cell, box, label, over, tabbable, onPress, onFocus }: EmptyCellProps) {
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
      className={over ? 'empty over' : 'empty'}
      data-cell={cell}
      onFocus={() => onFocus(cell)}
      onPointerDown={(event) => onPress(event, cell)}
    >
      <polygon points={pointsOf(boxOutline(inner))} className="empty-cell" />
      <g className="focus-ring" transform={`translate(${box.x + box.width / 2} ${box.y + box.height / 2})`}>
        <Ring width={inner.width} height={inner.height} className="stitch-solid" />
      </g>
    </g>
  );
}

function pointsOf(outline: Outline): string {
  return outline.map((point) => `${point.x},${point.y}`).join(' ');
}

/** Marks of findings, those of the chosen one apart, sorted by the block they lie in. */
function marksByBlock(findings: readonly Finding[], chosen: string | null) {
  const soft = new Map<BlockId, Mark[]>();
  const strong = new Map<BlockId, Mark[]>();
  const quiltSoft: Mark[] = [];
  const quiltStrong: Mark[] = [];
  for (const finding of findings) {
    const isChosen = finding.id === chosen;
    for (const mark of finding.marks) {
      if (mark.kind === 'pool' || mark.block === null) {
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
