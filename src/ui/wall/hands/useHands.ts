// Passes pointers, Escape and time to the state machine of hands.ts, and gives its gesture. The surface decides the rest.
import {
  type PointerEvent as ReactPointerEvent,
  useCallback,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import { type Hand, type HandEvent, type Handling, handsOf, REST, type Rules, step } from './hands';

/** Milliseconds that a finger must rest before it carries, where it would otherwise scroll. */
const RESTS = 260;

export interface Surface<What, Gesture, Outcome> {
  /** The rules for the present state; called at every event. */
  readonly rules: () => Rules<What, Gesture, Outcome>;
  readonly done: (outcome: Outcome) => void;
  /** Called after every move of a hand in a gesture, with the hands before and after it. */
  readonly moved?: (gesture: Gesture, before: readonly Hand[], after: readonly Hand[]) => void;
}

export interface Hands<What, Gesture> {
  readonly gesture: Gesture | null;
  readonly press: (event: ReactPointerEvent, what: What) => void;
  /** Takes something up by keys, or carries it on. */
  readonly carryByKey: (gesture: Gesture) => void;
  /** Puts down what the keys carry. */
  readonly put: () => void;
}

/** Hands on one surface. It listens for pointers in the whole window, so that none needs to be captured. */
export function useHands<What, Gesture, Outcome>(
  surface: Surface<What, Gesture, Outcome>,
): Hands<What, Gesture> {
  const [gesture, setGesture] = useState<Gesture | null>(null);
  const live = useRef<Handling<What, Gesture>>(REST);
  const timer = useRef<number | undefined>(undefined);
  const latest = useRef(surface);
  useLayoutEffect(() => {
    latest.current = surface;
  });

  const send = useCallback((event: HandEvent<What, Gesture>) => {
    const { rules, done, moved } = latest.current;
    const before = live.current;
    const { state, outcome } = step(before, event, rules());
    if (state === before) return;
    live.current = state;
    if (state.phase !== 'pressed') clearTimeout(timer.current);
    const now = state.phase === 'busy' ? state.gesture : null;
    setGesture(now);
    if (now !== null && event.kind === 'move') moved?.(now, handsOf(before), handsOf(state));
    if (outcome !== null) done(outcome);
  }, []);

  useEffect(() => {
    const spot = (event: PointerEvent) => ({ x: event.clientX, y: event.clientY });
    const move = (event: PointerEvent) => {
      // If a mouse moves without its button down, the button was released outside the window.
      const lost = event.pointerType === 'mouse' && event.buttons === 0;
      send({ kind: lost ? 'lost' : 'move', id: event.pointerId, at: spot(event) });
    };
    const lift = (event: PointerEvent) => send({ kind: 'lift', id: event.pointerId, at: spot(event) });
    const lost = (event: PointerEvent) => send({ kind: 'lost', id: event.pointerId });
    const key = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || live.current.phase === 'rest') return;
      event.stopPropagation();
      send({ kind: 'cancel' });
    };
    // A hand that leaves its surface must not select what it passes. A style of the whole page that forbids it would have every fabric
    // painted again.
    const select = (event: Event) => {
      if (live.current.phase !== 'rest') event.preventDefault();
    };
    document.addEventListener('selectstart', select);
    globalThis.addEventListener('pointermove', move);
    globalThis.addEventListener('pointerup', lift);
    globalThis.addEventListener('pointercancel', lost);
    globalThis.addEventListener('keydown', key, true);
    return () => {
      document.removeEventListener('selectstart', select);
      globalThis.removeEventListener('pointermove', move);
      globalThis.removeEventListener('pointerup', lift);
      globalThis.removeEventListener('pointercancel', lost);
      globalThis.removeEventListener('keydown', key, true);
      clearTimeout(timer.current);
    };
  }, [send]);

  // A finger that carries something must not scroll.
  const still = useCallback((event: TouchEvent) => {
    if (live.current.phase === 'busy' && event.cancelable) event.preventDefault();
  }, []);
  useEffect(() => {
    if (!latest.current.rules().restsFirst) return;
    document.addEventListener('touchmove', still, { passive: false });
    return () => document.removeEventListener('touchmove', still);
  }, [still]);

  const press = useCallback(
    (event: ReactPointerEvent, what: What) => {
      if (event.button !== 0) return;
      const { pointerId: id, clientX: x, clientY: y } = event;
      const touch = event.pointerType === 'touch';
      send({ kind: 'press', id, at: { x, y }, touch, what });
      if (!touch || !latest.current.rules().restsFirst) return;
      // What is carried may leave the page while it is drawn elsewhere; its touches then reach no other element.
      (event.target as Element).addEventListener('touchmove', still as EventListener, { passive: false });
      clearTimeout(timer.current);
      timer.current = globalThis.setTimeout(() => send({ kind: 'rested', id }), RESTS) as unknown as number;
    },
    [send, still],
  );
  const carryByKey = useCallback((next: Gesture) => send({ kind: 'key', gesture: next }), [send]);
  const put = useCallback(() => send({ kind: 'put' }), [send]);
  return { gesture, press, carryByKey, put };
}
