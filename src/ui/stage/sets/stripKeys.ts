// The keys of the strips that are laid out: arrows go from strip to strip; Space lifts one, arrows carry it, Space puts it down,
// Escape gives it up; Enter opens its set or lays a left-over on the open set; Delete takes a strip out.
import type { KeyboardEvent } from 'react';
import type { StripSource } from '../../../editing/commands/sets/carryStrip';
import { counted, phrase } from '../../../model/phrase';
import type { App } from '../../../store/app';
import { isKey } from '../../keys';
import { goalAfter, pressed, stripsBeside } from './carryRules';
import { ghostOf } from './ghost';
import type { Carrying } from './useCarry';

/** What has the focus: a strip of a set (index from 0), or a left-over with its number in the list. */
export type Focused = StripSource & { readonly row?: number };

/** Handles a key on a strip; true if the key has a meaning. `focus` moves the focus once the page is drawn. */
export function stripKey(
  event: KeyboardEvent,
  source: Focused,
  app: App,
  carrying: Carrying,
  focus: (selector: string) => void,
): boolean {
  const { gesture, carryByKey, put, done } = carrying;
  if (gesture) {
    if (isKey(event, 'stripWalk')) {
      const to = goalAfter(app.project, gesture, event.key);
      carryByKey({ ...gesture, to, hand: null });
      const words = ghostOf(app.project, gesture.from, to)?.words[0];
      if (words) app.announce(words);
      return true;
    }
    if (!isKey(event, 'stripLift') && !isKey(event, 'stripOpen')) return false;
    put();
    const { to } = gesture;
    if (to?.kind === 'set') focus(stripSelector(to.set, to.at));
    if (to?.kind === 'new') focus('[data-lay-set]:last-of-type [data-lay-strip]');
    return true;
  }
  if (isKey(event, 'stripWalk')) return goTo(event.key, source, app, focus);
  if (isKey(event, 'stripLift')) {
    const to = source.kind === 'set' ? source : ({ kind: 'left' } as const);
    carryByKey({ from: source, to, hand: null, of: app.project });
    app.announce(phrase('Lifted. Arrows carry it, Space puts it down, Escape cancels.'));
    return true;
  }
  if (isKey(event, 'stripOpen')) {
    const outcome = pressed(source, { project: app.project, open: app.laid.set });
    if (outcome) done(outcome);
    return true;
  }
  if (!isKey(event, 'stripOut') || source.kind !== 'set') return false;
  const rest = stripsBeside(app.project, source.set, source).length;
  done({ kind: 'carry', from: source, to: { kind: 'left' }, told: true });
  app.announce(counted(rest, 'Taken out; 1 strip stays.', 'Taken out; {count} strips stay.'));
  if (rest > 0) focus(stripSelector(source.set, Math.min(source.at, rest - 1)));
  return true;
}

function stripSelector(set: string, at: number): string {
  return `[data-lay-strip="${at} ${CSS.escape(set)}"]`;
}

/** Moves the focus by an arrow: up and down in a set or the left-overs, left and right to the next set. */
function goTo(key: string, source: Focused, { project }: App, focus: (selector: string) => void): boolean {
  const up = key === 'ArrowUp' ? 1 : key === 'ArrowDown' ? -1 : 0;
  if (source.kind === 'left') {
    if (up !== 0) focus(`[data-lay-row="${(source.row ?? 0) - up}"]`);
    return up !== 0;
  }
  if (up !== 0) {
    focus(stripSelector(source.set, source.at + up));
    return true;
  }
  const step = key === 'ArrowLeft' ? -1 : 1;
  const filled = project.stripSets.filter(({ strips }) => strips.length > 0);
  const next = filled[filled.findIndex(({ id }) => id === source.set) + step];
  if (next) focus(stripSelector(next.id, Math.min(source.at, next.strips.length - 1)));
  return true;
}
