// The rules of hands and keys on the strips that are laid out. Pure; wall/hands/hands.ts runs them. A finger must rest on a strip
// before it carries it, so that the table still scrolls. A press that carries nothing opens the set, or lays a left-over on it.
import type { StripGoal, StripSource } from '../../../editing/commands/sets/carryStrip';
import { stripSpans } from '../../../geometry/stripSet';
import { findSet } from '../../../model/find';
import type { Project, Strip, StripSetId } from '../../../model/project';
import type { Inches } from '../../../model/units';
import type { Hand, Rules, Spot } from '../../wall/hands/hands';

/** A strip under a hand or the keys. */
export interface CarriedStrip {
  readonly from: StripSource;
  /** Where it would be put down; null over nothing. */
  readonly to: StripGoal | null;
  /** Null by keys. */
  readonly hand: Spot | null;
  /** The quilt it was taken up from: when that changes, its place in the set may be another strip's. */
  readonly of: Project;
}

export type CarryOutcome =
  | {
      readonly kind: 'carry';
      readonly from: StripSource;
      readonly to: StripGoal;
      /** Whether the ghost under the hand has said already what it gives. */
      readonly told: boolean;
    }
  | { readonly kind: 'open'; readonly set: StripSetId };

/** The table that the rules need. */
export interface Table {
  readonly project: Project;
  /** The set on which a press lays a left-over; null for none. */
  readonly open: StripSetId | null;
  readonly goalAt: (spot: Spot, from: StripSource) => StripGoal | null;
}

export function carryRules(table: Table): Rules<StripSource, CarriedStrip, CarryOutcome> {
  const carried = (from: StripSource, { at }: Hand, of: Project, before: StripGoal | null): CarriedStrip => {
    const to = table.goalAt(at, from);
    // The same goal stays the same object, so that its ghost is worked out once.
    return { from, to: to && before && sameGoal(to, before) ? before : to, hand: at, of };
  };
  return {
    restsFirst: true,
    begin: (from, hand) => ({ gesture: carried(from, hand, table.project, null) }),
    join: null,
    follow: (gesture, from, [hand]) => (from && hand ? carried(from, hand, gesture.of, gesture.to) : gesture),
    tap: (from) => pressed(from, table),
    end: ({ from, to, of, hand }) =>
      to && of === table.project ? { kind: 'carry', from, to, told: hand !== null } : null,
  };
}

function sameGoal(one: StripGoal, other: StripGoal): boolean {
  if (one.kind !== 'set' || other.kind !== 'set') return one.kind === other.kind;
  return one.set === other.set && one.at === other.at;
}

/** The outcome of a press without a gesture, and of Enter. */
export function pressed(from: StripSource, { project, open }: Omit<Table, 'goalAt'>): CarryOutcome | null {
  if (from.kind === 'set') return { kind: 'open', set: from.set };
  const set = open === null ? undefined : findSet(project, open);
  return set
    ? { kind: 'carry', from, to: { kind: 'set', set: set.id, at: set.strips.length }, told: false }
    : null;
}

/** The strips among which one is put down: those of the set without the one that is carried. */
export function stripsBeside(project: Project, set: StripSetId, from: StripSource): readonly Strip[] {
  const strips = findSet(project, set)?.strips ?? [];
  return from.kind === 'set' && from.set === set ? strips.toSpliced(from.at, 1) : strips;
}

/** The index at which a strip is put that is let go so far above the edge of the first strip: beyond the strips whose middle is below. */
export function indexAt(strips: readonly Strip[], seam: Inches, above: Inches): number {
  return stripSpans(strips, seam).filter(({ from, to }) => (from + to) / 2 < above).length;
}

/** The goal after an arrow key: up and down within a set, left and right from set to set, to a new set and the left-overs. */
export function goalAfter(project: Project, { from, to }: CarriedStrip, key: string): StripGoal {
  if (to?.kind === 'set' && (key === 'ArrowUp' || key === 'ArrowDown')) {
    const most = stripsBeside(project, to.set, from).length;
    return { ...to, at: Math.max(0, Math.min(most, to.at + (key === 'ArrowUp' ? 1 : -1))) };
  }
  const sets = project.stripSets.map(({ id }) => id);
  const goals = [...sets, 'new', 'left'] as const;
  const now = to === null ? -1 : to.kind === 'set' ? sets.indexOf(to.set) : goals.indexOf(to.kind);
  const step = key === 'ArrowLeft' ? -1 : key === 'ArrowRight' ? 1 : 0;
  const next = Math.max(0, Math.min(goals.length - 1, now + step));
  if (next === now && to !== null) return to;
  const set = sets[next];
  if (set === undefined) return { kind: next === sets.length ? 'new' : 'left' };
  const beside = stripsBeside(project, set, from);
  if (to?.kind !== 'set') return { kind: 'set', set, at: beside.length };
  // As high as it was over the set before.
  const { seam } = project.wedge;
  const spans = stripSpans(stripsBeside(project, to.set, from), seam);
  return { kind: 'set', set, at: indexAt(beside, seam, spans[to.at - 1]?.to ?? 0) };
}
