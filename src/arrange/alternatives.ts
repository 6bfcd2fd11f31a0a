// Finds several good arrangements that differ. Many short searches run, each from its own seed. The best result is taken first;
// after it, again and again, the result whose seams differ most from those taken, as long as it scores nearly as well.

import { termScales } from '../balance/score/termScales';
import { DEFAULT_WEIGHTS, inPoints, TERM_NAMES } from '../balance/score/weights';
import { type WallModel, wallModel } from '../balance/wall/wallModel';
import { clothTable } from '../cloth/cloths';
import { asPieced } from '../geometry/asPieced';
import { SIDES } from '../geometry/contact';
import type { Move } from '../model/moves';
import type { Phrase } from '../model/phrase';
import type { Project, Strip } from '../model/project';
import { differences } from './alternativeWords';
import { findingChoices } from './choices/evenChoices';
import { decisionsOf, type Scopes } from './decisions';
import { costTables } from './live/costTables';
import { LiveWall } from './live/liveWall';
import { type Arrangement, movesBetween } from './movesBetween';
import { type Score, scoreThen } from './score';
import { type Kept, searchFrom } from './search/search';
import { budgetShare, noClock, type ShuffleWish } from './shuffle';

export interface Alternative {
  readonly moves: readonly Move[];
  readonly score: Score;
  /** Share of the seams between blocks (and between wedges, where those may change) unlike those of the nearest other, 0–1. */
  readonly apart: number;
  /** How much worse it scores than the first, as the difference of the two scores in the whole points that are shown. */
  readonly behind: number;
  /** Says what it does better and worse than the first. */
  readonly differences: readonly Phrase[];
}

/** The number of searches made for each arrangement wanted. */
const TRIES = 4;
/** A result is good while it scores worse than the best by no more than this share of a random top's score. */
const NEARLY = 0.03;
/** Rounds of the search between two reports; they take some milliseconds. */
const REPORT = 16;
/** Two arrangements that differ in a smaller share of seams look the same. */
const LEAST_APART = 0.3;

/** Says which searches one worker makes: from `first` on, every `of`-th. */
export interface Share {
  readonly first: number;
  readonly of: number;
}

/** The best arrangement of a search as plain data; its strip orders are a list. */
interface KeptData extends Omit<Kept, 'orders'> {
  readonly orders: readonly (readonly [set: number, strips: readonly Strip[]])[];
}

/** What ended the searches before all were made: the cap in milliseconds or the person; null where none did. */
export type CutShort = 'time' | 'stop' | null;

/** The results of a worker's searches by their numbers. */
export interface Tries {
  readonly found: readonly { readonly run: number; readonly kept: KeptData }[];
  readonly cut: CutShort;
}

/** What a wall is scored by: as ShuffleWish has it. */
export type ScoreWish = Pick<ShuffleWish, 'weights' | 'intent' | 'lookalikes'>;

/** The model, the scales and the weights by which walls are scored. */
export function deskFor(project: Project, wish: ScoreWish) {
  const lookalikes = wish.lookalikes ?? project.preferences.lookalikes;
  const model = wallModel(project, clothTable(project.fabrics, undefined, lookalikes));
  const scales = termScales(model, wish.intent ?? project.preferences.intent);
  return { model, scales, weights: wish.weights ?? DEFAULT_WEIGHTS };
}

/** Runs one worker's share of the searches; yields the share of the budget spent, every few milliseconds. */
export function* tryingAlternatives(
  given: Project,
  wish: ShuffleWish,
  count: number,
  share: Share,
  now: () => number = noClock,
): Generator<number, Tries, boolean> {
  const project = asPieced(given);
  const { model, scales, weights } = deskFor(project, wish);
  const decisions = decisionsOf(project, model, wish.scopes);
  const found: { run: number; kept: KeptData }[] = [];
  if (!decisions.free) return { found, cut: null };
  const tables = costTables(model, scales, weights);
  const all = Array.from({ length: TRIES * count }, (_, run) => run);
  const own = all.filter((run) => run % share.of === share.first);
  const { steps: most } = wish.budget;
  const ownSteps = most === undefined ? undefined : Math.ceil((most * own.length) / all.length);
  const spent = budgetShare({ ...wish.budget, ...(ownSteps === undefined ? {} : { steps: ownSteps }) }, now);
  let steps = 0;
  let stop = false;
  // Found once and beside the budget: half of what one search has would not be enough.
  const finding = findingChoices(new LiveWall(tables, decisions.spare), decisions);
  let choices = finding.next();
  for (; !choices.done && !stop; choices = finding.next()) stop = yield 0;
  for (const [at, run] of own.entries()) {
    // After a stop there is one at least: the wall as it hangs.
    if (stop && at > 0) break;
    const search = searchFrom(
      project,
      tables,
      decisions,
      (wish.seed + run * 7919) | 0,
      choices.done ? choices.value : null,
    );
    let rounds = 0;
    for (let part = spent(steps); !stop && part < (at + 1) / own.length; part = spent(steps + search.steps)) {
      search.advance(Math.max(0, part * own.length - at));
      rounds += 1;
      if (rounds % REPORT === 0) stop = yield part;
    }
    steps += search.steps;
    found.push({ run, kept: { ...search.best, orders: [...(search.best.orders ?? [])] } });
  }
  return { found, cut: stop ? 'stop' : ownSteps !== undefined && steps < ownSteps ? 'time' : null };
}

/** Chooses the best result and those that differ most from it and from each other, whichever worker was done first. */
export function chooseAlternatives(
  given: Project,
  wish: ShuffleWish,
  count: number,
  tries: readonly Tries[],
): Alternative[] {
  const project = asPieced(given);
  const { model, scales, weights } = deskFor(project, wish);
  const found = tries
    .flatMap((one) => one.found)
    .toSorted((one, other) => one.run - other.run)
    .map(({ kept }): Kept => ({ ...kept, orders: new Map(kept.orders) }));
  if (found.length === 0) return [];
  const chance = TERM_NAMES.reduce((sum, name) => sum + weights[name], 0);
  const scored = found.map((kept) => {
    const moves = movesBetween(project, kept);
    return { kept, moves, score: scoreThen({ project, model }, moves, scales.intent, weights) };
  });
  const taken = chosen(model, scored, count, NEARLY * chance, wish.scopes);
  const points = ({ total }: Score) => Math.round(inPoints(total, weights));
  return taken.map(({ moves, score, apart }) => ({
    moves,
    score,
    apart,
    behind: points(score) - points(taken[0]!.score),
    differences: differences(scales, score.terms, taken[0]!.score.terms, weights),
  }));
}

interface Scored {
  readonly kept: Kept;
  readonly moves: readonly Move[];
  readonly score: Score;
}

/** The best first, then those that differ most and score no more than `slack` worse; in the order of their scores. */
function chosen(
  model: WallModel,
  found: readonly Scored[],
  count: number,
  slack: number,
  scopes: Scopes,
): (Scored & { apart: number })[] {
  const ranked = found.toSorted((one, other) => one.score.total - other.score.total);
  const good = ranked
    .filter((one) => one.score.total <= ranked[0]!.score.total + slack)
    .map((one) => ({ one, seams: seamsOf(model, one.kept, scopes.trade || scopes.strips) }));
  const taken = good.slice(0, 1);
  while (taken.length < count) {
    const far = good
      .map((next) => ({ next, apart: Math.min(...taken.map((other) => unlike(next.seams, other.seams))) }))
      .reduce((best, next) => (next.apart > best.apart + 1e-12 ? next : best));
    if (far.apart < LEAST_APART) break;
    taken.push(far.next);
  }
  return taken
    .toSorted((one, other) => one.one.score.total - other.one.score.total)
    .map(({ one, seams }) => ({
      ...one,
      apart: Math.min(
        1,
        ...taken.filter((other) => other.one !== one).map((other) => unlike(seams, other.seams)),
      ),
    }));
}

/**
 * Names every seam of an arrangement by the two blocks and the points on their edges that meet there. Points count round each
 * block from its own first place, so that a wall turned as a whole has the same seams. `inside` adds the seams between wedges.
 */
export function seamsOf(model: WallModel, wall: Arrangement, inside: boolean): ReadonlySet<string> {
  const seams = new Set<string>();
  const { perBlock } = model;
  // Where a side touches a block, in wedge steps clockwise of its first place; half steps are between two places.
  const end = (block: number, side: number) => {
    const step = (side * perBlock) / SIDES.length - wall.orientationOf[block]!;
    return `${block}.${((step % perBlock) + perBlock) % perBlock}`;
  };
  const wedge = (place: number) => {
    const type = wall.typeAt[place]!;
    const strips = wall.orders?.get(type >> 1) ?? [];
    return [type, ...strips.map((strip) => `${strip.fabric} ${strip.width}`)].join(',');
  };
  for (let cell = 0; cell < model.blockIn.length; cell++) {
    const block = wall.blockIn[cell]!;
    if (block < 0) continue;
    for (const side of [1, 2]) {
      const next = model.neighbourCell[cell * 4 + side]!;
      const other = next < 0 ? -1 : wall.blockIn[next]!;
      if (other >= 0) seams.add([end(block, side), end(other, (side + 2) % 4)].toSorted().join(' '));
    }
    if (!inside) continue;
    for (let place = 0; place < perBlock; place++) {
      const at = block * perBlock;
      seams.add(`${block}:${place}:${wedge(at + place)}:${wedge(at + ((place + 1) % perBlock))}`);
    }
  }
  return seams;
}

/** Share of the seams of one arrangement that the other has not, 0–1; both have the same number. 0 without seams. */
export function unlike(one: ReadonlySet<string>, other: ReadonlySet<string>): number {
  if (one.size === 0) return 0;
  let gone = 0;
  for (const seam of one) if (!other.has(seam)) gone += 1;
  return gone / one.size;
}
