// Tries other strip orders for sets that are not sewn while a wall is arranged. The set in its new order adds two wedge types,
// which replace its own wedges one at a time; the living wall knows what each replacement costs.
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { wedgeTypes } from '../../balance/wall/wallFigures';
import type { Band } from '../../geometry/bands';
import type { Project, Strip } from '../../model/project';
import { sameStrip } from '../../model/strips';
import type { Inches } from '../../model/units';
import type { CostTables } from '../live/costTables';
import type { LiveWall } from '../live/liveWall';
import type { StripOrders as Orders } from '../movesBetween';

/** Figures of a wedge type that depend on the strip order, one number for each type. */
const FIGURES = ['typeRim', 'typeArea', 'typeLightness', 'typeA', 'typeB', 'typeWarmth'] as const;
const TIPS = [0, 1] as const;

/** Copies the tables, so that wedge types may change, and adds two types for the set that is tried. */
export function withRoomForOne(tables: CostTables): CostTables {
  const { model } = tables;
  const { fabricCount } = model;
  const types = model.typeRim.length + TIPS.length;
  const grown = (from: Float64Array, size: number) => {
    const table = new Float64Array(size);
    table.set(from);
    return table;
  };
  const typeRim = new Int32Array(types).fill(-1);
  typeRim.set(model.typeRim);
  return {
    ...tables,
    model: {
      ...model,
      typeBands: [...model.typeBands, ...TIPS.map(() => [])],
      typeRim,
      typeArea: grown(model.typeArea, types),
      typeLightness: grown(model.typeLightness, types),
      typeA: grown(model.typeA, types),
      typeB: grown(model.typeB, types),
      typeWarmth: grown(model.typeWarmth, types),
      typeFabricArea: grown(model.typeFabricArea, types * fabricCount),
      radialMemo: new Map(),
    },
  };
}

/** A set that may be sewn in another order. */
interface OpenSet {
  readonly at: number;
  /** Places whose strips are not locked, counted from the first strip. */
  readonly free: readonly number[];
  /** Faults by the rules of thumb in the set as the project has it; no order that is tried may have more of either. */
  readonly twins: number;
  readonly narrow: number;
}

interface Trial {
  readonly set: OpenSet;
  readonly strips: readonly Strip[];
  readonly places: readonly number[];
  readonly costBefore: number;
}

export class StripOrders {
  /** New strip orders by set; a new map after every change. */
  laid: Orders = new Map();
  private readonly project: Project;
  private readonly wall: LiveWall;
  private readonly sets: readonly OpenSet[];
  private readonly narrowest: Inches;
  /** The first of the two types for the set that is tried. */
  private readonly trialType: number;
  private trial: Trial | null = null;

  /** `wall` must have tables from withRoomForOne; this is not checked. */
  constructor(project: Project, wall: LiveWall, sets: Int32Array) {
    this.project = project;
    this.wall = wall;
    // What an earlier trial left in the memo would outlive its wedge types.
    wall.tables.model.radialMemo.clear();
    this.trialType = wall.tables.model.typeRim.length - TIPS.length;
    this.narrowest = narrowestOf(project);
    this.sets = Array.from(sets, (at) => {
      const { strips } = project.stripSets[at]!;
      return {
        at,
        free: strips.flatMap((strip, place) => (strip.locked ? [] : [place])),
        twins: twinsIn(strips),
        narrow: this.narrowRims(strips),
      };
    });
  }

  /**
   * Puts the strips of a random set in another order and returns what that adds to the score and how many wedges it changed.
   * Null when the drawn order is the same or breaks a rule. Call `keep` or `takeBack` afterwards.
   */
  tryOne(random: RandomGenerator): { readonly added: number; readonly wedges: number } | null {
    const { wall } = this;
    const set = this.sets[uniformInt(random, 0, this.sets.length - 1)]!;
    const before = this.stripsOf(set);
    const strips = reordered(before, set.free, random);
    if (strips.every((strip, place) => sameStrip(strip, before[place]!))) return null;
    if (twinsIn(strips) > set.twins || this.narrowRims(strips) > set.narrow) return null;
    const places = this.placesOf(set);
    this.trial = { set, strips, places, costBefore: wall.cost };
    this.readTrial(strips);
    for (const place of places) this.exchange(place, this.trialType + (wall.typeAt[place]! % 2));
    return { added: wall.cost - this.trial.costBefore, wedges: places.length };
  }

  /** Keeps the tried order. */
  keep(): void {
    const { set, strips, places } = this.underTrial();
    const { wall, trialType } = this;
    for (const tip of TIPS) this.copyType(trialType + tip, 2 * set.at + tip);
    for (const tip of TIPS) wall.forgetType(2 * set.at + tip);
    for (const place of places) {
      wall.rename(place, 2 * set.at + (wall.typeAt[place]! % 2));
      wall.replaced(place);
    }
    this.laid = new Map([...this.laid, [set.at, strips]]);
    this.trial = null;
  }

  /** Puts the set back in the order before the trial. */
  takeBack(): void {
    const { set, places, costBefore } = this.underTrial();
    const { wall } = this;
    for (const place of places.toReversed()) this.exchange(place, 2 * set.at + (wall.typeAt[place]! % 2));
    wall.cost = costBefore;
    this.trial = null;
  }

  private underTrial(): Trial {
    if (!this.trial) throw new Error('StripOrders: nothing is being tried');
    return this.trial;
  }

  private stripsOf(set: OpenSet): readonly Strip[] {
    return this.laid.get(set.at) ?? this.project.stripSets[set.at]!.strips;
  }

  /** Places of hanging blocks with wedges of the set. */
  private placesOf(set: OpenSet): number[] {
    const { typeAt, cellOf, tables } = this.wall;
    const { perBlock } = tables.model;
    const places: number[] = [];
    for (let place = 0; place < typeAt.length; place++) {
      if (typeAt[place]! >> 1 === set.at && cellOf[(place / perBlock) | 0]! >= 0) places.push(place);
    }
    return places;
  }

  private exchange(place: number, type: number): void {
    this.wall.tryInstead(place, type, this.wall.replaceCost(place, type));
  }

  /** Writes the figures of the set in this order to the two wedge types for trial. */
  private readTrial(strips: readonly Strip[]): void {
    const { model } = this.wall.tables;
    const { wedge, stripSets } = this.project;
    const types = wedgeTypes({ wedge, stripSets: [{ ...stripSets[0]!, strips: [...strips] }] }, model.cloths);
    for (const tip of TIPS) {
      const type = this.trialType + tip;
      this.wall.forgetSeams(type);
      for (const name of FIGURES) model[name][type] = types[name][tip]!;
      model.typeFabricArea.set(
        types.typeFabricArea.subarray(tip * model.fabricCount, (tip + 1) * model.fabricCount),
        type * model.fabricCount,
      );
      (model.typeBands as (readonly Band[])[])[type] = types.typeBands[tip]!;
    }
  }

  private copyType(from: number, to: number): void {
    const { model } = this.wall.tables;
    for (const name of FIGURES) model[name][to] = model[name][from]!;
    model.typeFabricArea.copyWithin(
      to * model.fabricCount,
      from * model.fabricCount,
      (from + 1) * model.fabricCount,
    );
    (model.typeBands as (readonly Band[])[])[to] = model.typeBands[from]!;
  }

  /** Counts outside edges with the narrowest strip, most of which vanishes in the seam (common practice, no source). */
  private narrowRims(strips: readonly Strip[]): number {
    return [strips[0]!, strips.at(-1)!].filter((strip) => strip.width <= this.narrowest).length;
  }
}

/** Counts neighbouring strips of the same fabric. */
function twinsIn(strips: readonly Strip[]): number {
  return strips.filter((strip, place) => place > 0 && strip.fabric === strips[place - 1]!.fabric).length;
}

/** The narrowest of all strips in the sets; 0 where all are of one width. */
function narrowestOf(project: Project): Inches {
  const widths = project.stripSets.flatMap((set) => set.strips.map((strip) => strip.width));
  const least = Math.min(...widths);
  return widths.every((width) => width === least) ? 0 : least;
}

/** Exchanges two free strips, moves one, or reverses a stretch of them; locked strips keep their places. */
function reordered(strips: readonly Strip[], free: readonly number[], random: RandomGenerator): Strip[] {
  const below = (count: number) => uniformInt(random, 0, count - 1);
  const loose = free.map((place) => strips[place]!);
  const from = below(loose.length);
  const to = below(loose.length);
  const way = below(3);
  if (way === 0) {
    [loose[from], loose[to]] = [loose[to]!, loose[from]!];
  } else if (way === 1) {
    loose.splice(to, 0, ...loose.splice(from, 1));
  } else {
    const [first, last] = from < to ? [from, to] : [to, from];
    loose.splice(first, last - first + 1, ...loose.slice(first, last + 1).toReversed());
  }
  const next = [...strips];
  free.forEach((place, at) => {
    next[place] = loose[at]!;
  });
  return next;
}
