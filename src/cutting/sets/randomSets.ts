// Strip sets made at random from the strips on hand, by the makers' rules of thumb (setScore.ts), for a seed. Sets that are
// kept (locked, sewn or cut) stay as they are, locked strips keep their places, and no strip is used twice.
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { clothTable } from '../../cloth/cloths';
import { heightShort, setHeight } from '../../geometry/stripSet';
import { freshId, setLetter } from '../../model/find';
import { HAIR, isTooNarrow } from '../../model/lengths';
import type { Phrase } from '../../model/phrase';
import type { Fabric, Project, Strip, StripOnHand, StripSet, WedgePlan } from '../../model/project';
import type { LengthUnit } from '../../model/units';
import { atOnce, type InParts } from '../../model/work/parts';
import { availableWedges, wedgesNeeded } from '../wedges/yield';
import {
  bettering,
  type LaidStrips,
  layingMore,
  lengthOf,
  raising,
  rowsLeft,
  takingApart,
} from './finishSets';
import { type LengthClass, lengthClasses, SAME_LENGTH } from './lengthClass';
import { planningSets } from './planSets';
import { setNotes } from './setNotes';
import { type SetScoring, setScoring } from './setScore';
import { type HeldPlaces, type LoosePiece, searchingSets } from './setSearch';
import type { SetTarget } from './setTarget';
import { stripsLeftBeside } from './stripsUnused';
import { findingWhyLeft, type StripsLeft } from './whyLeft';

export interface SetMaking {
  readonly fabrics: readonly Fabric[];
  /** ΔE00 from which two cloths no longer read as one, as the person has it (Preferences). */
  readonly lookalikes: number;
  readonly stripsOnHand: readonly StripOnHand[];
  readonly wedge: WedgePlan;
  /** The person's unit, whose usual sizes stand in where there are no strips to go by; absent: inches. */
  readonly unit?: LengthUnit;
  /** Sets that stay: locked, sewn or cut. Their strips are on hand no more; their wedges count. */
  readonly keep: readonly StripSet[];
  /** Sets made anew round their locked strips; they keep their letters. */
  readonly held?: readonly StripSet[];
  /** So many new sets, as few as these blocks need beside the kept ones, or those that give most wedges of all strips. */
  readonly want: { readonly sets: number } | { readonly blocks: number } | 'most';
  readonly seed: number;
}

export interface MadeSets {
  /** The new sets only, all high enough but those with locked strips there were no others to lay to. */
  readonly sets: StripSet[];
  /** Strips on hand that no set uses. */
  readonly left: StripOnHand[];
  /** The same by the rule that leaves them. */
  readonly whyLeft: StripsLeft[];
  /** What is missing or could not be helped; empty when all went well. */
  readonly notes: Phrase[];
  /** The score of the sets by SET_WEIGHTS; lower is better. Only for comparing makings of the same strips. */
  readonly score: number;
}

/** Random starts of which the best is taken, and search steps for each set and start. */
const STARTS = 3;
const STEPS_PER_SET = 1_600;
const MOST_STEPS = 40_000;

/** What makeSets needs of a project: planned, unlocked sets are given up but for their locked strips, all others kept. */
export function setMakingOf(project: Project, want: SetMaking['want'], seed: number): SetMaking {
  const { fabrics, preferences, stripsOnHand, wedge } = project;
  const stays = (set: StripSet) => set.locked || set.progress !== 'planned';
  const keep = project.stripSets.filter(stays);
  const held = project.stripSets.filter((set) => !stays(set) && set.strips.some((strip) => strip.locked));
  const { lookalikes, unit } = preferences;
  return { fabrics, lookalikes, stripsOnHand, wedge, unit, keep, held, want, seed };
}

/**
 * How far making sets is: the share of the search's trials that is made, 0–1; null while heights are planned and while the
 * strips left are seen to, which take as long as they take.
 */
export type MakingShare = number | null;

/** Makes sets in one go. */
export function makeSets(making: SetMaking): MadeSets {
  return atOnce(makingSets(making));
}

/**
 * Makes sets, in parts of a few milliseconds. Never uses more strips than are on hand, never throws: what cannot be made is said in the notes, with the
 * strips that would mend it. The same input and seed give the same sets.
 */
export function* makingSets(making: SetMaking): Generator<MakingShare, MadeSets> {
  const { wedge, unit = 'in' } = making;
  const rows = stripsLeftBeside(making.stripsOnHand, [...making.keep, ...lockedParts(making)]);
  const wide = rows.filter((row) => !isTooNarrow(row.width, wedge.seam));
  const classes = lengthClasses(wide, wedge);
  const cloths = clothTable(making.fabrics, undefined, making.lookalikes);
  const scoring = setScoring(cloths, wide, wedge);
  const plan = yield* planningSets({ ...making, unit, held: making.held ?? [] }, classes);
  const { pieces, held } = heldPieces(making, loosePieces(plan.classes, scoring), plan.targets, scoring);
  const keptRims = making.keep
    .flatMap((set) => [set.strips[0], set.strips.at(-1)])
    .map((strip) => scoring.fabricIndex.get(strip?.fabric ?? ''))
    .filter((fabric) => fabric !== undefined);
  const steps = Math.min(MOST_STEPS, STEPS_PER_SET * plan.targets.length);
  const found = yield* searchingSets(
    { pieces, sets: plan.targets, held, keptRims, scoring },
    { starts: STARTS, steps },
    xoroshiro128plus(making.seed),
  );
  yield null;
  const searched = found.sets
    .map((set, at): LaidStrips => ({ strips: set.map((piece) => pieces[piece]!), held: at < held.length }))
    .filter((set) => set.held || highEnough(set, wedge));
  const laid = yield* finishing(searched, making, wide, plan.wanted, scoring);
  const sets = asStripSets(laid, wide, making);
  const left = rowsLeft(rows, laid);
  const high = sets.filter((set) => heightShort(setHeight(set.strips, wedge.seam), wedge) === 0);
  const notes = setNotes({
    ...making,
    unit,
    classes,
    wanted: plan.wanted,
    sets: high,
    left,
    mixed: sets.filter((_, at) => isMixed(laid[at]!, wide)),
  });
  const why = yield* findingWhyLeft(left, making.fabrics, wedge, making.want === 'most');
  return { sets, left, whyLeft: why, notes, score: found.cost };
}

/** The sets with what the strips beside them still give, as far as it is wanted. */
function* finishing(
  searched: readonly LaidStrips[],
  making: SetMaking,
  rows: readonly StripOnHand[],
  wanted: number,
  scoring: SetScoring,
): InParts<LaidStrips[]> {
  const { want, wedge, keep } = making;
  if (want === 'most') {
    const apart = yield* takingApart(searched, scoring);
    const most = yield* layingMore(apart, rows, scoring, () => true);
    const better = yield* bettering(most, rows, scoring, xoroshiro128plus(making.seed));
    return yield* raising(better, rows, scoring);
  }
  if ('sets' in want) return yield* layingMore(searched, rows, scoring, (laid) => laid.length < wanted);
  return yield* layingMore(searched, rows, scoring, (laid) => {
    const { up, down } = wedgesNeeded(want.blocks, [...keep, ...asStripSets(laid, rows, making)], wedge);
    return up + down > 0;
  });
}

/** The locked strips of sets made anew, as sets: what they take from the strips on hand. */
function lockedParts({ held = [] }: SetMaking): StripSet[] {
  return held.map((set) => ({ ...set, strips: set.strips.filter((strip) => strip.locked) }));
}

function loosePieces(classes: readonly LengthClass[], scoring: SetScoring): LoosePiece[] {
  return classes.flatMap(({ rows }, lengthClass) =>
    rows.flatMap((row) =>
      Array.from({ length: row.count }, () => ({
        fabric: row.fabric,
        fabricAt: scoring.fabricIndex.get(row.fabric)!,
        width: row.width,
        lengthClass,
        row: row.id,
      })),
    ),
  );
}

/** The locked strips as pieces behind the loose ones, and the places they keep in the first sets. */
function heldPieces(
  making: SetMaking,
  loose: readonly LoosePiece[],
  sets: readonly SetTarget[],
  scoring: SetScoring,
): { pieces: LoosePiece[]; held: HeldPlaces[] } {
  const pieces = [...loose];
  const held = (making.held ?? []).map((set, index): HeldPlaces => {
    const kept = set.strips.map((strip, at): number | null => {
      if (!strip.locked) return null;
      const fabricAt = scoring.fabricIndex.get(strip.fabric)!;
      const row = `locked ${set.id} ${at}`;
      pieces.push({
        fabric: strip.fabric,
        fabricAt,
        width: strip.width,
        lengthClass: sets[index]!.lengthClass,
        row,
        locked: true,
      });
      return pieces.length - 1;
    });
    // A locked last strip stays last; the others keep their places counted from the first.
    const last = kept.length > 1 ? kept.at(-1)! : null;
    const inner = last === null ? kept : kept.slice(0, -1);
    const end = inner.findLastIndex((piece) => piece !== null);
    return { fromFirst: inner.slice(0, end + 1), last };
  });
  return { pieces, held };
}

/** Whether strips lie in it that are not of about one length. */
function isMixed({ strips }: LaidStrips, rows: readonly StripOnHand[]): boolean {
  const lengths = strips.map(lengthOf(rows)).filter(Number.isFinite);
  return Math.max(0, ...lengths) - Math.min(...lengths) > SAME_LENGTH + HAIR;
}

function highEnough({ strips }: LaidStrips, wedge: WedgePlan): boolean {
  return heightShort(setHeight(strips, wedge.seam), wedge) === 0;
}

/** The sets with letters and ids, each as long as its shortest strip. */
function asStripSets(
  laid: readonly LaidStrips[],
  rows: readonly StripOnHand[],
  making: SetMaking,
): StripSet[] {
  const held = making.held ?? [];
  const taken: StripSet[] = [...making.keep, ...held];
  const balance = { up: 0, down: 0 };
  const balanced = (set: StripSet) => {
    const gives = availableWedges(set, making.wedge);
    balance.up += gives.up;
    balance.down += gives.down;
    return set;
  };
  making.keep.forEach(balanced);
  const labels = new Set(taken.map((set) => set.label));
  let letter = 0;
  const lengths = lengthOf(rows);
  return laid.map((chosen, at) => {
    const strips = chosen.strips.map(({ fabric, width, locked }): Strip => {
      return locked ? { fabric, width, locked } : { fabric, width };
    });
    const there = Math.min(...chosen.strips.map(lengths));
    const before = held[at];
    if (before) {
      return balanced({
        ...before,
        strips,
        length: Math.min(before.length, there),
        cut: null,
      });
    }
    while (labels.has(setLetter(letter))) letter += 1;
    labels.add(setLetter(letter));
    const set: StripSet = {
      id: freshId('s', taken),
      label: setLetter(letter),
      strips,
      length: there,
      pressing: 'last',
      // The tip there is less of comes first: an odd wedge is of that tip.
      firstTip: balance.up <= balance.down ? 'up' : 'down',
      progress: 'planned',
      cut: null,
      locked: false,
    };
    taken.push(set);
    return balanced(set);
  });
}
