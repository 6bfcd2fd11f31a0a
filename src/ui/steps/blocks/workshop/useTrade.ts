// Trading wedges by hand: carry one to another place, or hold one and choose the other place. A finger lifts a wedge by
// resting on it a moment, so that the panel still scrolls. Ends in one command or none.
import { useCallback, useEffect, useRef, useState } from 'react';
import { tradeWedges } from '../../../../editing/commands/blocks';
import { findBlock } from '../../../../model/find';
import { whyPlacesLocked } from '../../../../model/freedom';
import { phrase } from '../../../../model/phrase';
import type { Problem } from '../../../../model/result';
import { useAppStore } from '../../../app';
import { useRun } from '../../../fields/Complaint';
import { type PlaceRef, samePlace, type Trading } from './trade';

const SLIP = 6;
const REST = 260;

interface Pressed {
  readonly id: number;
  readonly from: PlaceRef;
  readonly x: number;
  readonly y: number;
  lifted: boolean;
  timer: number;
}

export interface TradeState extends Trading {
  readonly problems: readonly Problem[];
  /** Where the hand is while it carries a wedge, in the window. */
  readonly hand: { readonly x: number; readonly y: number } | null;
}

export function useTrade(): TradeState {
  const store = useAppStore();
  const [run, problems, clear] = useRun();
  const [held, setHeld] = useState<PlaceRef | null>(null);
  const [carried, setCarried] = useState<Trading['carried']>(null);
  const [hand, setHand] = useState<TradeState['hand']>(null);
  const pressed = useRef<Pressed | null>(null);

  const trade = useCallback(
    (from: PlaceRef, to: PlaceRef) => {
      setHeld(null);
      if (samePlace(from, to)) return;
      run(tradeWedges(store.getState().project, from, to));
    },
    [run, store],
  );
  const hold = useCallback(
    (place: PlaceRef | null) => {
      clear();
      setHeld(place);
      const { project, say } = store.getState();
      const block = place && findBlock(project, place.block);
      if (place && block) {
        const values = { place: place.place + 1, block: block.number };
        say(phrase('Place {place} of block {block} is held. Choose the place to trade with.', values));
      }
    },
    [clear, store],
  );
  const drop = useCallback(() => {
    if (pressed.current) clearTimeout(pressed.current.timer);
    pressed.current = null;
    setCarried(null);
    setHand(null);
  }, []);

  useEffect(() => {
    const lift = (event: PointerEvent, press: Pressed) => {
      const block = findBlock(store.getState().project, press.from.block);
      const reason = block ? whyPlacesLocked(block) : null;
      if (reason || !block?.places[press.from.place]) {
        drop();
        if (reason) store.getState().say(reason);
        return;
      }
      press.lifted = true;
      setCarried({ from: press.from, over: null });
      setHand({ x: event.clientX, y: event.clientY });
    };
    const move = (event: PointerEvent) => {
      const press = pressed.current;
      if (press?.id !== event.pointerId) return;
      const gone = Math.hypot(event.clientX - press.x, event.clientY - press.y);
      if (!press.lifted) {
        if (gone < SLIP) return;
        if (event.pointerType === 'touch') return drop();
        lift(event, press);
        if (!press.lifted) return;
      }
      setHand({ x: event.clientX, y: event.clientY });
      setCarried({ from: press.from, over: placeUnder(event.clientX, event.clientY) });
    };
    const up = (event: PointerEvent) => {
      const press = pressed.current;
      if (press?.id !== event.pointerId) return;
      const over = press.lifted ? placeUnder(event.clientX, event.clientY) : null;
      drop();
      if (event.type === 'pointerup' && over) trade(press.from, over);
    };
    const key = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || (pressed.current === null && held === null)) return;
      event.stopPropagation();
      drop();
      setHeld(null);
    };
    // Once a finger has lifted a wedge, its way must not scroll the panel.
    const still = (event: TouchEvent) => {
      if (pressed.current?.lifted && event.cancelable) event.preventDefault();
    };
    globalThis.addEventListener('pointermove', move);
    globalThis.addEventListener('pointerup', up);
    globalThis.addEventListener('pointercancel', up);
    globalThis.addEventListener('keydown', key, true);
    document.addEventListener('touchmove', still, { passive: false });
    return () => {
      globalThis.removeEventListener('pointermove', move);
      globalThis.removeEventListener('pointerup', up);
      globalThis.removeEventListener('pointercancel', up);
      globalThis.removeEventListener('keydown', key, true);
      document.removeEventListener('touchmove', still);
    };
  }, [store, trade, drop, held]);

  const press = useCallback(
    (event: React.PointerEvent, from: PlaceRef) => {
      if (event.button !== 0 || pressed.current !== null) return;
      const { pointerId, clientX, clientY } = event;
      const one: Pressed = { id: pointerId, from, x: clientX, y: clientY, lifted: false, timer: 0 };
      if (event.pointerType === 'touch') {
        one.timer = window.setTimeout(() => {
          const block = findBlock(store.getState().project, from.block);
          if (pressed.current !== one || !block?.places[from.place] || whyPlacesLocked(block)) return;
          one.lifted = true;
          setCarried({ from, over: null });
          setHand({ x: clientX, y: clientY });
        }, REST);
      }
      pressed.current = one;
    },
    [store],
  );
  return { held, carried, hand, problems, hold, press, trade };
}

function placeUnder(x: number, y: number): PlaceRef | null {
  const found = document.elementFromPoint(x, y)?.closest('[data-workshop-place]');
  const block = found?.getAttribute('data-workshop-block');
  return block ? { block, place: Number(found?.getAttribute('data-workshop-place')) } : null;
}
