// One place of the block in the workshop: its wedge as a target, its number, and the arrow of its pressing.

import type { KeyboardEvent, PointerEvent } from 'react';
import type { SeamLie } from '../../../cutting/wedges/nesting';
import { outlinePoints } from '../../../drawing/number';
import { bandOutline, direction } from '../../../geometry/block';
import { apothem, slope } from '../../../geometry/wedge';
import type { BlockId, WedgePlan } from '../../../model/project';
import { useApp } from '../../app';

interface Props {
  place: number;
  block: BlockId;
  /** Direction in wedge steps clockwise from the top, as the block hangs. */
  toward: number;
  lie: SeamLie | null;
  label: string;
  chosen: boolean;
  tabbable: boolean;
  held: boolean;
  over: boolean;
  onPress: (event: PointerEvent) => void;
  onClick: () => void;
  onKeyDown: (event: KeyboardEvent) => void;
}

export function PlaceFace(props: Props) {
  const { place, toward, lie, chosen, held, over } = props;
  const wedge = useApp((app) => app.project.wedge);
  const rim = apothem(wedge);
  const size = 0.78 * Math.min(rim / 7, (rim * slope(wedge.perBlock)) / 2.9);
  const points = (inset: number) => outlinePoints(bandOutline(toward, rim - inset, 0, wedge.perBlock));
  // The number and arrow keep off the rim, so that its cloth is seen.
  const unit = direction(toward, wedge.perBlock);
  const at = { x: unit.x * rim * 0.68, y: unit.y * rim * 0.68 };
  const degrees = (toward * 360) / wedge.perBlock;
  return (
    // biome-ignore lint/a11y/useSemanticElements: an SVG group cannot be an <input>
    <g
      role="radio"
      aria-checked={chosen}
      aria-label={props.label}
      tabIndex={props.tabbable ? 0 : -1}
      data-workshop-block={props.block}
      data-workshop-place={place}
      className={held ? 'place held' : 'place'}
      onPointerDown={props.onPress}
      onClick={props.onClick}
      onKeyDown={props.onKeyDown}
    >
      <polygon points={points(0)} className="target" />
      {chosen || over ? (
        <>
          <polygon points={points(0.22)} className="ring stitch-under" />
          <polygon points={points(0.22)} className={over ? 'ring over-place' : 'ring stitch'} />
        </>
      ) : null}
      <g className="place-focus">
        <polygon points={points(0.12)} className="ring stitch-under" />
        <polygon points={points(0.12)} className="ring focus-line" />
      </g>
      <g transform={`translate(${at.x} ${at.y}) scale(${size})`} aria-hidden>
        <circle r={0.78} className="place-disc" />
        <text y={0.36} className="place-number">
          {place + 1}
        </text>
        {lie === null ? null : (
          <path
            transform={`rotate(${lie === 'rim' ? degrees : degrees + 180}) translate(0 ${lie === 'rim' ? 1.62 : -1.62})`}
            d="M0 -0.62 L0.5 0.02 L0.17 0.02 L0.17 0.62 L-0.17 0.62 L-0.17 0.02 L-0.5 0.02 Z"
            className="press-arrow"
          />
        )}
      </g>
    </g>
  );
}

/** A short bar over every seam whose two sides are pressed the same way. */
export function NotNesting(props: {
  seams: readonly (readonly [number, number])[];
  stands: number;
  wedge: WedgePlan;
}) {
  const { perBlock } = props.wedge;
  const rim = apothem(props.wedge);
  return (
    <g aria-hidden>
      {props.seams.map(([place]) => {
        const unit = direction(place + props.stands + 0.5, perBlock);
        const reach = rim * 0.82;
        return (
          <g key={place} transform={`translate(${unit.x * reach} ${unit.y * reach})`} className="slip">
            <circle r={0.42} />
            <path d="M-0.2 -0.2 L0.2 0.2 M0.2 -0.2 L-0.2 0.2" />
          </g>
        );
      })}
    </g>
  );
}
