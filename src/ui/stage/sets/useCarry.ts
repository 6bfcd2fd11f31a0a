// Carries strips on the table of sets: gives carryRules.ts the places on screen, works out the ghost, and carries the outcomes out.
import { type RefObject, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import {
  carryStrip,
  type StripGoal,
  type StripSource,
  staysPut,
} from '../../../editing/commands/sets/carryStrip';
import { findSet } from '../../../model/find';
import { phrase } from '../../../model/phrase';
import type { Project, StripSetId } from '../../../model/project';
import type { Problem } from '../../../model/result';
import { useApp, useAppStore } from '../../app';
import type { Spot } from '../../wall/hands/hands';
import { type Hands, useHands } from '../../wall/hands/useHands';
import { type CarriedStrip, type CarryOutcome, carryRules, indexAt, stripsBeside } from './carryRules';
import { type Ghost, ghostOf } from './ghost';

/** A drop that was refused, with the quilt that refused it: any change of the quilt may take the cause away. */
export interface RefusedDrop {
  readonly from: StripSource;
  readonly to: StripGoal;
  readonly problem: Problem;
  readonly of: Project;
}

export interface Carrying
  extends Pick<Hands<StripSource, CarriedStrip>, 'gesture' | 'press' | 'carryByKey' | 'put'> {
  readonly ghost: Ghost | null;
  readonly refused: RefusedDrop | null;
  readonly leave: () => void;
  readonly done: (outcome: CarryOutcome) => void;
}

export function useCarry(table: RefObject<HTMLElement | null>): Carrying {
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [refused, setRefused] = useState<RefusedDrop | null>(null);
  const leave = useCallback(() => setRefused(null), []);
  const done = useCallback(
    (outcome: CarryOutcome) => {
      const app = store.getState();
      setRefused(null);
      if (outcome.kind === 'open') {
        app.lay({ set: app.laid.set === outcome.set ? null : outcome.set });
        return;
      }
      const { from, to, told } = outcome;
      const ghost = ghostOf(app.project, from, to);
      // Said once, where the strip was to go; so the store is not asked to refuse it again.
      if (ghost?.refused) {
        setRefused({ from, to, problem: ghost.refused, of: app.project });
        return;
      }
      app.run(carryStrip(app.project, from, to));
      const [first, second] = ghost?.words ?? [];
      if (!first || told || staysPut(from, to)) return;
      app.announce(second ? phrase('{first}. {second}', { first, second }) : first);
    },
    [store],
  );
  const { gesture, press, carryByKey, put } = useHands<StripSource, CarriedStrip, CarryOutcome>({
    rules: () => {
      const app = store.getState();
      const goalAt = (spot: Spot, from: StripSource) => goalUnder(spot, from, app.project);
      return carryRules({ project: app.project, open: app.laid.set, goalAt });
    },
    done,
  });
  const valid = gesture !== null && gesture.of === project ? gesture : null;
  const from = valid?.from ?? null;
  const to = valid?.to ?? null;
  const ghost = useMemo(() => (from ? ghostOf(project, from, to) : null), [project, from, to]);
  useEdges(table, valid?.hand ?? null);
  return {
    gesture: valid,
    press,
    carryByKey,
    put,
    ghost,
    refused: valid === null && refused?.of === project ? refused : null,
    leave,
    done,
  };
}

function goalUnder({ x, y }: Spot, from: StripSource, project: Project): StripGoal | null {
  const under = document.elementFromPoint(x, y);
  if (under?.closest('[data-lay-left]')) return { kind: 'left' };
  if (under?.closest('[data-lay-new]')) return { kind: 'new' };
  const card = under?.closest('[data-lay-set]');
  const id = card?.getAttribute('data-lay-set');
  const cloth = card?.querySelector<SVGSVGElement>('[data-lay-cloth]');
  if (!id || !cloth) return null;
  // The set that the strip would begin.
  if (!findSet(project, id)) return { kind: 'new' };
  return { kind: 'set', set: id, at: indexUnder(cloth, y, id, from, project) };
}

function indexUnder(
  cloth: SVGSVGElement,
  y: number,
  set: StripSetId,
  from: StripSource,
  project: Project,
): number {
  const box = cloth.getBoundingClientRect();
  const above = ((box.bottom - y) / box.height) * cloth.viewBox.baseVal.height;
  return indexAt(stripsBeside(project, set, from), project.wedge.seam, above);
}

/** Screen pixels from the upper or lower edge within which a hand that carries scrolls the table. */
const EDGE = 44;
const PACE = 9;

/** Scrolls the lists of the table while a hand carries something at their edge. */
function useEdges(table: RefObject<HTMLElement | null>, hand: Spot | null): void {
  const now = useRef(hand);
  useLayoutEffect(() => {
    now.current = hand;
  });
  const carrying = hand !== null;
  useEffect(() => {
    if (!carrying) return;
    let frame = requestAnimationFrame(function next() {
      const spot = now.current;
      for (const list of table.current?.querySelectorAll('[data-lay-scroll]') ?? []) {
        const box = list.getBoundingClientRect();
        if (!spot || spot.x < box.left || spot.x > box.right || spot.y < box.top || spot.y > box.bottom)
          continue;
        if (spot.y < box.top + EDGE) list.scrollBy(0, -PACE);
        if (spot.y > box.bottom - EDGE) list.scrollBy(0, PACE);
      }
      frame = requestAnimationFrame(next);
    });
    return () => cancelAnimationFrame(frame);
  }, [carrying, table]);
}
