// What the rims of a wall cost at least, whatever hangs where: a lower bound for turning and exchanging.
import { aloneCost, type Contacts, leastMeeting } from './contacts';

/** Seams of the radial kind are not in it; they do not change. */
export function contactFloor(contacts: Contacts): number {
  const { model } = contacts.tables;
  const movable = new Set(contacts.decisions.cells);
  let floor = 0;
  model.blockIn.forEach((block, cell) => {
    if (block < 0) return;
    if (movable.has(cell)) {
      floor += Math.min(...contacts.corners[block]!);
      return;
    }
    floor += leastAlone(contacts, block, cell);
    for (const side of [1, 2]) {
      const next = model.beyond[cell * 4 + side]!;
      const other = next < 0 ? -1 : model.blockIn[next]!;
      if (other >= 0 && !movable.has(next)) floor += leastMeeting(contacts, block, other, side);
    }
  });
  return floor;
}

function leastAlone(contacts: Contacts, block: number, cell: number): number {
  return contacts.decisions.standings[block]!.reduce(
    (least, _, at) => Math.min(least, aloneCost(contacts, block, at, cell)),
    Number.POSITIVE_INFINITY,
  );
}
