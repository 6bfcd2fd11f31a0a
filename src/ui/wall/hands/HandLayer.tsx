// The layer over the top that changes with the hand: the carried or turned block and flannel over its cell, the cell where it would
// hang, the ring and handle of the picked block, and stitches round the blocks that a preview would move.
import type { PointerEvent } from 'react';
import type { Drawing, HungBlock } from '../../../drawing/drawing';
import { drawBlock } from '../../../drawing/drawProject';
import { type Point, tilted } from '../../../geometry/point';
import { findBlock } from '../../../model/find';
import type { BlockId, Fabric, Project } from '../../../model/project';
import { BlockView } from '../BlockView';
import { Ring } from '../HungBlockView';
import { SMALL_CELL } from '../view';
import type { Gesture } from './gesture';

/** The shadow of a carried block, drawn, because WebKit has no filters within an SVG: how far each layer reaches, and how deep it lies, in inches. */
const SHADOW = [0.15, 0.35, 0.6] as const;
const DROP = 0.5;
/** How much larger a carried block looks. */
const LIFTED = 1.04;

interface Props {
  project: Project;
  drawing: Drawing;
  fabrics: readonly Fabric[];
  gesture: Gesture | null;
  picked: HungBlock | undefined;
  /** Blocks that the preview would move. */
  moved: ReadonlySet<BlockId>;
  /** Screen pixels to the inch. */
  scale: number;
  centreOf: (cell: number) => Point;
  onHandle: (event: PointerEvent, block: BlockId) => void;
}

export function HandLayer({
  project,
  drawing,
  fabrics,
  gesture,
  picked,
  moved,
  scale,
  centreOf,
  onHandle,
}: Props) {
  const { width, height } = drawing.block;
  const { tilt } = drawing;
  const corner = tilted({ x: width / 2, y: -height / 2 }, tilt);
  const ring = (at: Point, className: string, key?: string) => (
    <g key={key} className="picked" transform={`translate(${at.x} ${at.y}) rotate(${tilt})`} aria-hidden>
      <Ring width={width} height={height} className={className} />
    </g>
  );
  const carry = gesture?.kind === 'carry' ? gesture : null;
  const twist = gesture?.kind === 'twist' ? gesture : null;
  const inHand = carry?.block ?? twist?.block;
  const hung = drawing.blocks.find((one) => one.block === inHand);
  const waiting = carry && !hung ? findBlock(project, carry.block) : undefined;
  return (
    <>
      {drawing.blocks
        .filter((one) => moved.has(one.block))
        .map((one) => ring(one.centre, 'stitch', `moved ${one.block}`))}
      {hung ? (
        // Laid over the cell here, because to fade the block itself would paint the top again.
        <rect
          className={carry ? 'left-cell' : 'left-cell whole'}
          transform={`translate(${hung.centre.x} ${hung.centre.y}) rotate(${tilt})`}
          x={-width / 2}
          y={-height / 2}
          width={width}
          height={height}
        />
      ) : null}
      {twist && hung ? (
        <g transform={`translate(${hung.centre.x} ${hung.centre.y})`} aria-hidden>
          <g transform={`rotate(${hung.quarters * 90 + tilt + twist.degrees})`}>
            <g className="seen">
              <BlockView pieces={hung.pieces} fabrics={fabrics} lit={null} near />
            </g>
          </g>
        </g>
      ) : null}
      {carry && carry.over !== null ? ring(centreOf(carry.over), 'over-ring') : null}
      {carry && (hung || waiting) ? (
        <g className="block carried" transform={`translate(${carry.at.x} ${carry.at.y})`} aria-hidden>
          <LiftShadow width={width * LIFTED} height={height * LIFTED} tilt={tilt} />
          <g
            className="lift"
            transform={`rotate(${(hung?.quarters ?? 0) * 90 + tilt}) scale(${LIFTED})`}
            opacity={0.92}
          >
            <g className="seen">
              <BlockView
                pieces={hung?.pieces ?? (waiting ? drawBlock(project, waiting) : [])}
                fabrics={fabrics}
                lit={null}
                near
              />
            </g>
          </g>
        </g>
      ) : null}
      {picked && !carry ? ring(picked.centre, 'stitch') : null}
      {picked && gesture === null && Math.min(width, height) * scale >= SMALL_CELL ? (
        <TurnHandle
          at={{ x: picked.centre.x + corner.x, y: picked.centre.y + corner.y }}
          radius={11 / scale}
          onPress={(event) => onHandle(event, picked.block)}
        />
      ) : null}
    </>
  );
}

function LiftShadow({ width, height, tilt }: { width: number; height: number; tilt: number }) {
  return SHADOW.map((reach) => (
    <rect
      key={reach}
      className="lift-shadow"
      transform={`translate(0 ${DROP}) rotate(${tilt})`}
      x={-width / 2 - reach}
      y={-height / 2 - reach}
      width={width + 2 * reach}
      height={height + 2 * reach}
      rx={reach}
    />
  ));
}

function TurnHandle(props: { at: Point; radius: number; onPress: (event: PointerEvent) => void }) {
  const { at, radius } = props;
  const arc = radius * 0.46;
  return (
    <g
      className="turn-handle"
      transform={`translate(${at.x} ${at.y})`}
      onPointerDown={props.onPress}
      aria-hidden
    >
      <circle r={radius * 2} fill="transparent" />
      <circle r={radius} fill="#fff" stroke="#000" strokeWidth={radius * 0.14} />
      <path
        d={`M ${-arc} ${-arc * 0.2} A ${arc} ${arc} 0 1 1 ${-arc * 0.2} ${arc}`}
        fill="none"
        stroke="#000"
        strokeWidth={radius * 0.16}
      />
    </g>
  );
}
