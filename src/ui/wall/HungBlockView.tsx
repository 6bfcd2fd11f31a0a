// A block that hangs on the wall: its cloth; and over it, apart so that a blur of the cloth leaves it sharp, what is pressed, its marks, pin
// and number, and the ring of focus or picking.
import { memo, type PointerEvent } from 'react';
import type { Mark } from '../../balance/finding';
import type { HungBlock } from '../../drawing/drawing';
import { type Point, tilted } from '../../geometry/point';
import type { Fabric, FabricId } from '../../model/project';
import { BlockView } from './BlockView';
import { lieOf } from './flights';
import { SeamMarks } from './marks/Marks';

interface Props {
  hung: HungBlock;
  width: number;
  height: number;
  label: string;
  picked: boolean;
  tabbable: boolean;
  number: boolean;
  marks: readonly Mark[];
  strongMarks: readonly Mark[];
  onPress: (event: PointerEvent, cell: number) => void;
  onFocus: (cell: number) => void;
}

interface ClothProps {
  hung: HungBlock;
  fabrics: readonly Fabric[];
  lit: FabricId | null;
  near: boolean;
}

export const HungCloth = memo(function HungCloth({ hung, ...look }: ClothProps) {
  const { at, degrees } = lieOf(hung);
  return (
    <g transform={`translate(${at.x} ${at.y}) rotate(${degrees})`}>
      <BlockView pieces={hung.pieces} {...look} />
    </g>
  );
});

export const HungBlockView = memo(function HungBlockView(props: Props) {
  const { hung, width, height, picked } = props;
  const { at, degrees } = lieOf(hung);
  return (
    // biome-ignore lint/a11y/useSemanticElements: an SVG group cannot be a <button>
    <g
      role="button"
      aria-label={props.label}
      aria-pressed={picked}
      tabIndex={props.tabbable ? 0 : -1}
      data-cell={hung.cell}
      data-block={hung.number}
      className="block"
      onPointerDown={(event) => props.onPress(event, hung.cell)}
      onFocus={() => props.onFocus(hung.cell)}
    >
      <g transform={`translate(${at.x} ${at.y})`}>
        <rect
          x={-width / 2}
          y={-height / 2}
          width={width}
          height={height}
          transform={`rotate(${hung.tilt})`}
          fill="transparent"
        />
        <g transform={`rotate(${degrees})`}>
          <SeamMarks marks={props.marks} strong={false} />
          <SeamMarks marks={props.strongMarks} strong />
        </g>
        {hung.pinned ? <Pin at={tilted({ x: -width / 2 + 0.9, y: -height / 2 + 0.9 }, hung.tilt)} /> : null}
        {props.number ? (
          <text className="block-number" dy="0.37em">
            {hung.number}
          </text>
        ) : null}
        <g className="focus-ring" transform={`rotate(${hung.tilt})`}>
          <Ring width={width - 0.5} height={height - 0.5} className="stitch-solid" />
        </g>
      </g>
    </g>
  );
});

export function Ring({ width, height, className }: { width: number; height: number; className: string }) {
  const box = { x: -width / 2, y: -height / 2, width, height };
  return (
    <>
      <rect {...box} className="ring stitch-under" />
      <rect {...box} className={`ring ${className}`} stroke="#fff" strokeWidth={3} />
    </>
  );
}

function Pin({ at }: { at: Point }) {
  return (
    <g transform={`translate(${at.x} ${at.y})`}>
      <g className="pin">
        <line x1={0.1} y1={0.1} x2={1.5} y2={1.5} stroke="#000" strokeWidth={0.28} />
        <line x1={0.1} y1={0.1} x2={1.5} y2={1.5} stroke="#eee" strokeWidth={0.14} />
        <circle r={0.55} fill="#fff" stroke="#000" strokeWidth={0.14} />
        <circle r={0.16} cx={-0.14} cy={-0.14} fill="#000" />
      </g>
    </g>
  );
}
