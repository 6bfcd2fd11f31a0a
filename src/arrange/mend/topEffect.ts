// What other wedges in the places of blocks do to the score of the whole top, wedge by wedge, without working it out anew:
// contact along the seams, across block edges and sashing and against the corners, and the evenness of the whole.
import type { Analysis } from '../../balance/analyse';
import { type Terms, weighted } from '../../balance/score/weights';
import { costTables } from '../live/costTables';
import { LiveWall } from '../live/liveWall';
import { withRoomForOne } from '../search/stripOrders';

/** A wedge of another type (as in balance/wall/wallModel) in a place, block × N + place. */
export interface NewWedge {
  readonly place: number;
  readonly type: number;
}

export class TopEffect {
  /** The score of the top as it hangs. */
  readonly now: number;
  private readonly wall: LiveWall;
  /** A type without cloth, which lies in the empty places of blocks that have wedges. */
  private readonly blank: number;

  /** Linear in blocks and fabrics; made once for an analysis. */
  constructor(analysis: Analysis, weights: Terms) {
    const { model, scales, terms } = analysis;
    this.now = weighted(terms, weights);
    const tables = withRoomForOne(costTables(model, scales, weights));
    this.blank = model.typeRim.length;
    this.wall = new LiveWall(tables, new Int32Array(tables.model.typeRim.length));
    const { typeAt } = this.wall;
    for (let place = 0; place < typeAt.length; place++) {
      if (typeAt[place]! < 0 && this.weighs(place)) typeAt[place] = this.blank;
    }
  }

  /** Whether the block of a place hangs and has a wedge: others weigh nothing in the score. */
  weighs(place: number): boolean {
    const { model } = this.wall.tables;
    const block = Math.floor(place / model.perBlock);
    return model.cellOf[block]! >= 0 && model.area[block]! > 0;
  }

  /** What a wedge in the place adds to the score; 0 where its block weighs nothing. */
  ofOne({ place, type }: NewWedge): number {
    return this.weighs(place) ? this.wall.replaceCost(place, type) : 0;
  }

  /** What trading the wedges of two places adds. Both must hold one. */
  ofTrade(place: number, other: number): number {
    const { typeAt } = this.wall;
    if (this.weighs(place) && this.weighs(other)) return this.wall.tradeCost(place, other);
    return this.ofOne({ place, type: typeAt[other]! }) + this.ofOne({ place: other, type: typeAt[place]! });
  }
}
