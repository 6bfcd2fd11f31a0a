// Plays what moves on the wall, each block in a drawing of its own, so that the top is painted once for a turn or a swap and not
// in every frame. The top has everything in its new place already: an animation that is interrupted leaves nothing to put right.
import { memo, useCallback, useLayoutEffect, useRef, useState } from 'react';
import type { Drawing } from '../../drawing/drawing';
import type { BlockId, Fabric, FabricId } from '../../model/project';
import { BlockView } from './BlockView';
import { type Flight, flightsBetween, type Held, type Lie } from './flights';
import type { View } from './view';

/** Milliseconds that a block is under way; --quick of the theme. */
const QUICK = 200;

interface Props {
  drawing: Drawing;
  fabrics: readonly Fabric[];
  /** The view that the sheet is drawn for. */
  view: View;
  /** The block in the hand, and where. */
  held: Held | null;
  lit: FabricId | null;
  near: boolean;
  number: boolean;
}

export const FlightLayer = memo(function FlightLayer({ drawing, view, held, ...look }: Props) {
  const [flights, setFlights] = useState<readonly Flight[]>([]);
  const before = useRef({ drawing, held });
  useLayoutEffect(() => {
    const last = before.current;
    before.current = { drawing, held };
    if (last.drawing === drawing) return;
    const still = globalThis.matchMedia('(prefers-reduced-motion: reduce)').matches;
    setFlights((underWay) =>
      still ? [] : flightsBetween(last.drawing, drawing, last.held ?? held, underWay),
    );
  }, [drawing, held]);
  const land = useCallback(
    (block: BlockId) => setFlights((now) => now.filter((flight) => flight.hung.block !== block)),
    [],
  );
  if (flights.length === 0) return null;
  const size = {
    width: drawing.block.width * view.scale,
    height: drawing.block.height * view.scale,
  };
  const box = `${-drawing.block.width / 2} ${-drawing.block.height / 2} ${drawing.block.width} ${drawing.block.height}`;
  return (
    <div className="flights" aria-hidden>
      {flights.map(({ hung, to }) => (
        // Flannel over the block in its new place, where it has not arrived yet.
        <div
          key={`gap ${hung.block}`}
          className="gap"
          style={{ ...size, transform: `${moveTo(to, view, size)} rotate(${drawing.tilt}deg)` }}
        />
      ))}
      {flights.map((flight) => (
        <Flown
          key={flight.hung.block}
          flight={flight}
          view={view}
          size={size}
          box={box}
          onLand={land}
          {...look}
        />
      ))}
    </div>
  );
});

interface FlownProps extends Omit<Props, 'drawing' | 'held'> {
  flight: Flight;
  size: { width: number; height: number };
  box: string;
  onLand: (block: BlockId) => void;
}

function Flown({ flight, view, size, box, onLand, ...look }: FlownProps) {
  const { hung, from, to } = flight;
  const carried = useRef<HTMLDivElement>(null);
  const turned = useRef<SVGSVGElement>(null);
  useGlide(carried, moveTo(from, view, size), moveTo(to, view, size), () => onLand(hung.block));
  useGlide(turned, `rotate(${from.degrees}deg)`, `rotate(${to.degrees}deg)`, null);
  return (
    <div ref={carried} className="flown" style={size}>
      <svg ref={turned} viewBox={box} {...size} aria-hidden>
        <g className="seen">
          <BlockView pieces={hung.pieces} fabrics={look.fabrics} lit={look.lit} near={look.near} />
        </g>
      </svg>
      {look.number ? (
        <svg viewBox={box} {...size} aria-hidden>
          <text className="block-number" dy="0.37em">
            {hung.number}
          </text>
        </svg>
      ) : null}
    </div>
  );
}

function moveTo({ at }: Lie, { scale, at: corner }: View, size: { width: number; height: number }): string {
  const left = corner.left + at.x * scale - size.width / 2;
  const top = corner.top + at.y * scale - size.height / 2;
  return `translate(${left}px, ${top}px)`;
}

/** Lets an element glide from one transform to another; when it is sent elsewhere on the way, from where it is on screen by then. */
function useGlide(
  element: React.RefObject<HTMLElement | SVGElement | null>,
  from: string,
  to: string,
  onEnd: (() => void) | null,
): void {
  const [first] = useState(from);
  const glided = useRef(false);
  const ended = useRef(onEnd);
  useLayoutEffect(() => {
    ended.current = onEnd;
  });
  useLayoutEffect(() => {
    const shown = element.current;
    if (!shown) return;
    const start = glided.current ? getComputedStyle(shown).transform : first;
    glided.current = true;
    shown.style.transform = to;
    const glide = shown.animate([{ transform: start }, { transform: to }], {
      duration: QUICK,
      easing: 'ease',
    });
    glide.onfinish = () => ended.current?.();
    return () => {
      // What is on screen stays the start of the next glide.
      const now = getComputedStyle(shown).transform;
      glide.cancel();
      shown.style.transform = now;
    };
  }, [element, first, to]);
}
