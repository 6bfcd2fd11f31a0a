// Decides how far an arrangement is from the best there is: finds the best arrangement itself where the wall is small, else a
// lower bound on the score of every arrangement.
import type { Project } from '../../model/project';
import type { Part } from '../branch/branchAndBound';
import type { Decisions } from '../decisions';
import type { CostTables } from '../live/costTables';
import type { Kept } from '../search/search';
import { type Contacts, contactsOf } from './contactTables';
import { findingBest, isSmall } from './exactOptimum';
import { boundInParts } from './lowerBound';
import { boundAfter, type RootBound } from './rootBound';
import { SearchToTheEnd } from './searchToTheEnd';
import { type Spread, spreadOf } from './spreadAssignment';
import { tradeBound } from './tradeBound';

export class Proof {
  /** Whether the best arrangement can be found and proved in a moment. */
  readonly isShort: boolean;
  /** True once the best arrangement has been found and proved. */
  done = false;
  /** No arrangement scores lower than this; null before boundInParts has ended. */
  bound: number | null = null;
  private readonly contacts: Contacts | null;
  private readonly spread: Spread;
  private readonly open: () => Generator<void, number>;

  constructor(project: Project, tables: CostTables, decisions: Decisions) {
    const trades = decisions.tradable.some((places) => places.length > 0);
    const sews = decisions.sets.length > 0;
    this.open = () => tradeBound(project, tables, decisions);
    this.contacts = trades || sews ? null : contactsOf(tables, decisions);
    this.spread = spreadOf(tables);
    this.isShort = this.contacts !== null && isSmall(this.contacts, decisions.cells.length);
  }

  /** Finds the best of all arrangements; returns `known` where none is better. Only where isShort. Yields every few milliseconds. */
  *better(known: Kept): Generator<void, Kept> {
    if (!this.contacts) throw new Error('Proof: wedges may be traded');
    const found = yield* findingBest(this.contacts, this.spread, known.cost);
    this.done = true;
    this.bound = found?.cost ?? known.cost;
    if (!found) return known;
    return {
      ...known,
      blockIn: Int32Array.from(found.blockIn),
      orientationOf: Int32Array.from(found.orientationOf),
      cost: found.cost,
    };
  }

  /** A search for what scores below `known`, with its proof; null where the wall is too large for it, or wedges may change. */
  toTheEnd(known: number, parts?: readonly Part[]): SearchToTheEnd | null {
    return this.contacts && SearchToTheEnd.of(this.contacts, this.spread, known, parts);
  }

  /** A higher bound, after a search of so many steps and as long again; null where that is not open. */
  raising(searched: number): RootBound | null {
    return this.contacts && boundAfter(this.contacts, this.spread, searched);
  }

  /** Works out the bound; yields between its parts, which are long on a large wall. */
  *bounding(): Generator<void, void> {
    this.bound = yield* this.contacts ? boundInParts(this.contacts, this.spread) : this.open();
  }
}
