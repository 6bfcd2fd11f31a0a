// What other wedges in the places of blocks do to the score of the whole top, wedge by wedge, without working it out anew:
// contact along the seams, across block edges and sashing and against the corners, and the evenness of the whole.
import type { Analysis } from '../../balance/analyse';
import { type Terms, weighted } from '../../balance/score/terms';
import { costTables } from '../live/costTables';
import { LiveWall } from '../live/liveWall';
import { withRoomForOne } from '../search/stripOrders';

/** A wedge of another kind (as in balance/wallModel) in a place, block × N + place. */
export interface NewWedge {
  readonly place: number;
  readonly kind: number;
}

export class TopEffect {
  /** The score of the top as it hangs. */
  readonly now: number;
  private readonly wall: LiveWall;
  /** A kind without cloth, which lies in the empty places of blocks that have wedges. */
  private readonly blank: number;

  /** Linear in blocks and fabrics; made once for an analysis. */
  constructor(analysis: Analysis, weights: Terms) {
    const { model, basis, terms } = analysis;
    this.now = weighted(terms, weights);
    const tables = withRoomForOne(costTables(model, basis, weights));
    this.blank = model.kindRim.length;
    this.wall = new LiveWall(tables, new Int32Array(tables.model.kindRim.length));
    const { kindAt } = this.wall;
    for (let place = 0; place < kindAt.length; place++) {
      if (kindAt[place]! < 0 && this.weighs(place)) kindAt[place] = this.blank;
    }
  }

  /** Whether the block of a place hangs and has a wedge: others weigh nothing in the score. */
  weighs(place: number): boolean {
    const { model } = this.wall.tables;
    const block = Math.floor(place / model.perBlock);
    return model.cellOf[block]! >= 0 && model.area[block]! > 0;
  }

  /** What a wedge in the place adds to the score; 0 where its block weighs nothing. */
  ofOne({ place, kind }: NewWedge): number {
    return this.weighs(place) ? this.wall.replaceCost(place, kind) : 0;
  }

  /** What trading the wedges of two places adds. Both must hold one. */
  ofTrade(place: number, other: number): number {
    const { kindAt } = this.wall;
    if (this.weighs(place) && this.weighs(other)) return this.wall.tradeCost(place, other);
    return this.ofOne({ place, kind: kindAt[other]! }) + this.ofOne({ place: other, kind: kindAt[place]! });
  }
}
