// Puts the clash part of the score into tables for proofs: the cost of a block in a cell with an orientation, and of two blocks
// side by side. Computed from the model alone, so that it checks the living wall as well.
import type { ClashSums } from '../../balance/clashes/clashRule';
import { addContact } from '../../balance/clashes/clashSums';
import { type CornerContact, cornersInches, visitCorners } from '../../balance/clashes/contacts';
import { cornerIn, sideRim } from '../../balance/wall/wallModel';
import type { Decisions } from '../decisions';
import { cornerSorts } from '../live/cornerSorts';
import { type CostTables, seamCost } from '../live/costTables';

export interface Contacts {
  readonly tables: CostTables;
  readonly decisions: Decisions;
  /** Cost of all radial seams of hung blocks, which no turn and no exchange changes. */
  readonly constant: number;
  /** Rims of each block for each of its orientations: rims[block][orientation index × 4 + side] → fabric or `none`. */
  readonly rims: readonly Int32Array[];
  /** Sort of corner of each cell by the quilt's rule. */
  readonly sortOf: Uint8Array;
  /** Cost of each block's rims against its own corners: sort × orientations + orientation index. */
  readonly corners: readonly Float64Array[];
}

export function contactsOf(tables: CostTables, decisions: Decisions): Contacts {
  const { model } = tables;
  const rims = decisions.orientations.map((orientations, block) =>
    Int32Array.from({ length: orientations.length * 4 }, (_, at) => {
      const rim = sideRim(model, block, orientations[at >> 2]!, at & 3);
      return rim < 0 ? tables.none : rim;
    }),
  );
  const { sortOf, sorts } = cornerSorts(model);
  const corners = decisions.orientations.map((orientations, block) =>
    Float64Array.from(
      sorts.flatMap((cell) => Array.from(orientations, (stands) => cornerCost(tables, block, stands, cell))),
    ),
  );
  const hung = Array.from(model.blockIn).filter((block) => block >= 0);
  const constant = hung.reduce((sum, block) => sum + radialCost(tables, block), 0);
  return { tables, decisions, constant, rims, sortOf, corners };
}

function radialCost(tables: CostTables, block: number): number {
  const { model } = tables;
  let cost = 0;
  for (let place = 0; place < model.perBlock; place++) {
    const type = model.typeAt[block * model.perBlock + place]!;
    const next = model.typeAt[block * model.perBlock + ((place + 1) % model.perBlock)]!;
    if (type >= 0 && next >= 0) cost += seamCost(tables, type, next);
  }
  return cost;
}

function cornerCost(tables: CostTables, block: number, stands: number, cell: number): number {
  const sums: ClashSums = { same: 0, alike: 0 };
  const add = (contact: CornerContact) => addContact(sums, contact);
  visitCorners(tables.model, block, add, stands, cornerIn(tables.model, block, cell));
  return tables.perSameInch * sums.same + tables.perAlikeInch * sums.alike;
}

/** Cost of a block in a cell by itself: its corners, and its sides against sashing and border. `at`: orientation index. */
export function aloneCost(contacts: Contacts, block: number, at: number, cell: number): number {
  const { tables, rims, corners, sortOf, decisions } = contacts;
  let cost = corners[block]![sortOf[cell]! * decisions.orientations[block]!.length + at]!;
  for (let side = 0; side < 4; side++) {
    const cloth = tables.model.settingFabric[cell * 4 + side]!;
    if (cloth >= 0) cost += tables.touching[rims[block]![at * 4 + side]! * tables.stride + cloth]!;
  }
  return cost;
}

/** Cost of two blocks whose sides touch, without sashing: `side` of the first towards the second. */
export function touchingCost(
  contacts: Contacts,
  block: number,
  at: number,
  other: number,
  otherAt: number,
  side: number,
): number {
  const { tables, rims } = contacts;
  const rim = rims[block]![at * 4 + side]!;
  const facing = rims[other]![otherAt * 4 + ((side + 2) & 3)]!;
  return tables.touching[rim * tables.stride + facing]! + cornersTouching(tables, block, other, side);
}

function cornersTouching(tables: CostTables, block: number, other: number, side: number): number {
  const { model } = tables;
  const perRim = tables.touching[model.corner[block]! * tables.stride + model.corner[other]!]!;
  return (perRim * cornersInches(model, block, other, side)) / model.rim;
}

/** The least cost of two blocks that touch, over all their orientations. */
export function leastTouching(contacts: Contacts, block: number, other: number, side: number): number {
  const { orientations } = contacts.decisions;
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at < orientations[block]!.length; at++) {
    for (let otherAt = 0; otherAt < orientations[other]!.length; otherAt++) {
      least = Math.min(least, touchingCost(contacts, block, at, other, otherAt, side));
      if (least === 0) return 0;
    }
  }
  return least;
}
