// One fabric as a piece of cloth with pinked edges, its name and value under it. Pointing at it lights its pieces on the wall.
import { memo } from 'react';
import { greyOf, type Tone } from '../../../colour/tone';
import type { FabricAmount } from '../../../drawing/fabricOrder';
import { clothValue } from '../../../drawing/shares';
import type { Fabric } from '../../../model/project';
import type { Inches } from '../../../model/units';
import { useApp, useAppStore } from '../../app';
import { clothFill } from '../../wall/cloth';
import { useSay } from '../../words';
import { focusForm } from './focusForm';

interface Props {
  fabric: Fabric;
  amount: FabricAmount | undefined;
  /** Among the fabrics of this quilt. */
  tone: Tone | null;
  picked: boolean;
  width: Inches;
  height: Inches;
  /** Screen pixels for one inch of cloth. */
  scale: number;
}

export const PieceOfCloth = memo(function PieceOfCloth({
  fabric,
  amount,
  tone,
  picked,
  width,
  height,
  scale,
}: Props) {
  const say = useSay();
  const store = useAppStore();
  const lit = useApp((app) => app.lit === fabric.id);
  const value = clothValue(fabric);
  const light = (on: boolean) => store.getState().light(on ? fabric.id : null);
  const edge = pinked(width, height);
  const howMuch = useAmount(amount);
  return (
    <li className="laid-piece" style={{ containIntrinsicSize: `auto ${height * scale + 62}px` }}>
      <button
        type="button"
        data-fabric={fabric.id}
        className={lit ? 'lit' : undefined}
        aria-pressed={picked}
        title={fabric.name}
        onPointerEnter={() => light(true)}
        onFocus={() => light(true)}
        onBlur={() => light(false)}
        onClick={() => {
          store.getState().lay({ fabric: picked ? null : fabric.id });
          if (!picked) focusForm();
        }}
      >
        <svg width={width * scale} height={height * scale} viewBox={`0 0 ${width} ${height}`} aria-hidden>
          <path className="cloth-shadow" d={edge} transform="translate(0.02 0.03)" />
          <g className="seen">
            <path d={edge} fill={clothFill(fabric)} />
          </g>
        </svg>
        <bdi className="laid-name">{fabric.name}</bdi>
        <span className="laid-value">
          <span className="laid-grey" style={{ background: greyOf(value) }} aria-hidden />
          {say('Value {value}', { value: Math.round(value) })}
          {tone ? ` · ${say(tone)}` : ''}
        </span>
        <span className="laid-value">
          {howMuch}
          {fabric.background ? ` · ${say('background')}` : ''}
        </span>
      </button>
    </li>
  );
});

/** The share of the top, else what is on hand. */
function useAmount(amount: FabricAmount | undefined): string {
  const say = useSay();
  if (!amount) return say('not used yet');
  if (amount.share > 0) {
    const share = amount.share < 0.0095 ? '< 1' : String(Math.round(amount.share * 100));
    return say('{share}% of the top', { share });
  }
  return say('{area} on hand', { area: { squareInches: amount.onHand } });
}

/** Teeth of pinking shears along an edge: about so many inches from tip to tip. */
const TOOTH = 0.09;

/** A path of width × height inches with zigzag edges. */
function pinked(width: Inches, height: Inches): string {
  const across = Math.round(width / TOOTH);
  const down = Math.round(height / TOOTH);
  const [dx, dy] = [width / across, height / down];
  const depth = TOOTH * 0.45;
  const top = side(across, (at) => [at * dx, 0], [0, depth], [dx / 2, 0]);
  const right = side(down, (at) => [width, at * dy], [-depth, 0], [0, dy / 2]);
  const bottom = side(across, (at) => [width - at * dx, height], [0, -depth], [-dx / 2, 0]);
  const left = side(down, (at) => [0, height - at * dy], [depth, 0], [0, -dy / 2]);
  return `M${[...top, ...right, ...bottom, ...left].join('L')}Z`;
}

type Point = readonly [number, number];

/** Tips on the edge and, half a tooth on, notches as deep as `inwards`. */
function side(teeth: number, tip: (at: number) => Point, inwards: Point, half: Point): string[] {
  return Array.from({ length: teeth }, (_, at) => {
    const [x, y] = tip(at);
    return `${written(x, y)}L${written(x + half[0] + inwards[0], y + half[1] + inwards[1])}`;
  });
}

function written(x: number, y: number): string {
  return `${x.toFixed(3)} ${y.toFixed(3)}`;
}
