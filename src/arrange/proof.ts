// How good an arrangement is, for sure: the best there is where a wall is small, else a bound no arrangement comes below.
import { boundInParts } from './bound';
import { type Contacts, contactsOf } from './contacts';
import type { CostTables } from './costTables';
import type { Decisions } from './decisions';
import { findingBest, isSmall } from './exact';
import type { Kept } from './search';
import { type Spread, spreadOf } from './spread';

export class Proof {
  /** Whether the best arrangement can be found and proved in a moment. */
  readonly isShort: boolean;
  /** Whether it has been. */
  done = false;
  /** No arrangement scores lower than this; null before boundInParts has ended. */
  bound: number | null = null;
  private readonly contacts: Contacts | null;
  private readonly spread: Spread;

  /**
   * Wedges that may be traded, and strips that may be sewn in another order, leave nothing to hold a bound to but 0: every term is a sum of squares or of inches. Nor do
   * blocks that get other corners in another cell (`cornersMove`), since their figures are not their own.
   */
  constructor(tables: CostTables, decisions: Decisions, cornersMove: boolean) {
    const trades = decisions.tradable.some((places) => places.length > 0);
    const sews = decisions.sets.length > 0;
    this.contacts = trades || sews || cornersMove ? null : contactsOf(tables, decisions);
    this.spread = spreadOf(tables);
    this.isShort = this.contacts !== null && isSmall(this.contacts, decisions.cells.length);
  }

  /** The best of all arrangements, which is `known` where none is better. Only where isShort. Yields every few milliseconds. */
  *better(known: Kept): Generator<void, Kept> {
    if (!this.contacts) throw new Error('Proof: wedges may be traded');
    const found = yield* findingBest(this.contacts, this.spread, known.cost);
    this.done = true;
    this.bound = found?.cost ?? known.cost;
    if (!found) return known;
    return {
      ...known,
      blockIn: Int32Array.from(found.blockIn),
      standingOf: Int32Array.from(found.standingOf),
      cost: found.cost,
    };
  }

  /** Works out the bound; yields between its parts, which are long on a large wall. */
  *bounding(): Generator<void, void> {
    this.bound = this.contacts ? yield* boundInParts(this.contacts, this.spread) : 0;
  }
}
