// One strip set on the table: the left end of its cloth at the scale of all sets, its height against the line of the need, and
// under it its letter and its figures in words. Every strip can be taken up.
import { Lock, TriangleAlert } from 'lucide-react';
import { memo, type PointerEvent, type ReactNode } from 'react';
import type { StripSource } from '../../../editing/commands/sets/carryStrip';
import { heightShort, setHeight, stripPlaces } from '../../../geometry/stripSet';
import type { Fabric, FabricId, StripSet, StripSetId, WedgePlan } from '../../../model/project';
import type { Inches } from '../../../model/units';
import { Fractions } from '../../fields/Fractions';
import { heightWords } from '../../steps/sets/heightWords';
import { SET_PROGRESS_NAMES } from '../../steps/sets/setNames';
import { clothFill } from '../../wall/cloth';
import { useSay } from '../../words';
import { pieceSize } from './pieceSize';
import { SewingArrows } from './SewingArrows';

/** Inches of the length of a set that are shown. */
const SHOWN: Inches = 5.9;
/** Inches of flannel above the highest edge, so that one strip more can be seen. */
const ABOVE: Inches = 0.8;

export interface LaidSetProps {
  /** The set as it would be while a strip is carried over it. */
  set: StripSet;
  /** Its height as it is: the drawing keeps its size while a strip is carried, so that nothing moves under the hand. */
  room: Inches;
  wedge: WedgePlan;
  fabrics: ReadonlyMap<FabricId, Fabric>;
  up: number;
  down: number;
  open: boolean;
  /** The strip that is carried: its index here. */
  carried: number | null;
  /** Whether the carried strip would come to lie here; else it is faded where it still lies. */
  coming: boolean;
  over: boolean;
  /** The strip that Tab goes to. */
  tabAt: number;
  onOpen: (set: StripSetId) => void;
  onPress: (event: PointerEvent, source: StripSource) => void;
  /** Why a drop here was refused. */
  children?: ReactNode;
}

export const LaidSet = memo(function LaidSet(props: LaidSetProps) {
  const say = useSay();
  const { set, wedge, open, up, down } = props;
  const height = setHeight(set.strips, wedge.seam);
  const empty = set.strips.length === 0;
  const short = heightShort(height, wedge) > 0;
  const words = empty ? say('no strips yet') : say(heightWords(height, wedge));
  const progress = say(SET_PROGRESS_NAMES[set.progress]);
  return (
    <li
      className={`lay-set${props.over ? ' over' : ''}${open ? ' open' : ''}${props.children ? ' refused' : ''}`}
      data-lay-set={set.id}
    >
      <LaidCloth {...props} height={height} />
      <button
        type="button"
        className="lay-name"
        aria-expanded={open}
        aria-label={say('Set {set}: {height}; {progress}', { set: set.label, height: words, progress })}
        onClick={() => props.onOpen(set.id)}
      >
        <span>
          <bdi className="number">{set.label}</bdi>
          <span className={short ? 'lay-short' : undefined}>
            {short ? <TriangleAlert size={14} aria-hidden /> : null} <Fractions text={words} />
          </span>
        </span>
        {up + down > 0 ? <span>{say('{up} up, {down} down', { up, down })}</span> : null}
        <span className="lay-more">
          <Fractions text={say('{length} long', { length: { inches: set.length } })} />
          {set.progress === 'planned' ? null : ` · ${progress}`}{' '}
          {set.locked ? <Lock size={12} aria-label={say('locked')} /> : null}
        </span>
      </button>
      {props.children}
    </li>
  );
});

function LaidCloth(props: LaidSetProps & { height: Inches }) {
  const say = useSay();
  const { set, wedge, fabrics, height, carried } = props;
  const high = Math.max(props.room, wedge.cutHeight) + ABOVE;
  const shown = Math.min(SHOWN, set.length);
  return (
    <div className="lay-cloth" style={pieceSize({ high, wide: SHOWN, need: wedge.cutHeight })}>
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing cannot be a <fieldset> */}
      <svg
        data-lay-cloth
        viewBox={`0 0 ${SHOWN} ${high}`}
        role="group"
        aria-label={say('Strips of set {set}', { set: set.label })}
      >
        <g transform={`translate(0 ${high - height})`}>
          {stripPlaces(set.strips, wedge.seam)
            .toReversed()
            .map(({ strip: at, top, bottom }) => {
              const strip = set.strips[at]!;
              const fabric = fabrics.get(strip.fabric);
              const look = carried !== at ? '' : props.coming ? ' coming' : ' going';
              const values = {
                number: at + 1,
                count: set.strips.length,
                name: fabric?.name ?? '',
                width: { inches: strip.width },
              };
              return (
                // biome-ignore lint/a11y/useSemanticElements: an SVG group cannot be a <button>
                <g
                  key={at}
                  role="button"
                  tabIndex={at === Math.min(props.tabAt, set.strips.length - 1) ? 0 : -1}
                  className={`lay-strip${look}`}
                  data-lay-strip={`${at} ${set.id}`}
                  aria-label={say(
                    strip.locked
                      ? 'Strip {number} of {count}: {name}, cut {width}, locked'
                      : 'Strip {number} of {count}: {name}, cut {width}',
                    values,
                  )}
                  transform={`translate(0 ${top})`}
                  onPointerDown={(event) => props.onPress(event, { kind: 'set', set: set.id, at })}
                >
                  <rect width={shown} height={bottom - top} fill={fabric ? clothFill(fabric) : 'none'} />
                  {at > 0 ? <path className="set-seam" d={`M0 ${bottom - top}h${shown}`} /> : null}
                  {strip.locked ? <LockSign x={shown - 0.85} y={(bottom - top) / 2} /> : null}
                  <rect className="lay-ring" x={0.04} y={0.04} width={shown - 0.08} height={Math.max(0.1, bottom - top - 0.08)} />
                </g>
              ); // biome-ignore format: short
            })}
          {height > 0 ? <rect className="set-edge" width={shown} height={height} /> : null}
          {props.open && carried === null ? (
            <SewingArrows set={{ ...set, length: shown }} seam={wedge.seam} />
          ) : null}
        </g>
      </svg>
      <span className="lay-need" aria-hidden />
    </div>
  );
}

function LockSign({ x, y }: { x: Inches; y: Inches }) {
  return (
    <g transform={`translate(${x} ${y})`} className="lay-lock" aria-hidden>
      <circle cx={0.35} r={0.4} />
      <path d="M0.18 -0.02h0.34v0.22h-0.34zM0.25 -0.02v-0.1a0.1 0.1 0 0 1 0.2 0v0.1" />
    </g>
  );
}
