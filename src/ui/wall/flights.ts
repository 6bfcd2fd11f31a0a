// What moves on the wall from one drawing to the next, and from where: a block that was turned or hung elsewhere is played in a
// drawing of its own over the top, which shows it in its new place at once. Pure.
import type { Drawing, HungBlock } from '../../drawing/drawing';
import type { Point } from '../../geometry/point';
import type { BlockId } from '../../model/project';
import { turnFrom } from './hands/turning';

/** Blocks that are played at once at most; where more move, as in a shuffle of a large top, all are in their places at once. */
export const MOST_FLIGHTS = 20;

/** Where a block lies: its middle in quilt inches, and degrees clockwise. */
export interface Lie {
  readonly at: Point;
  readonly degrees: number;
}

export interface Flight {
  readonly hung: HungBlock;
  readonly from: Lie;
  readonly to: Lie;
}

/** The block in the hand when it was let go, and where. */
export interface Held extends Lie {
  readonly block: BlockId;
}

/**
 * The blocks to play from one drawing to the next. What is under way goes on to its new place. None where the blocks have another
 * size or the top another shape, and none where too many move.
 */
export function flightsBetween(
  before: Drawing,
  after: Drawing,
  held: Held | null,
  underWay: readonly Flight[],
): readonly Flight[] {
  if (!sameShape(before, after)) return [];
  const old = new Map(before.blocks.map((hung) => [hung.block, lieOf(hung)]));
  const flying = new Map(underWay.map((flight) => [flight.hung.block, flight]));
  const flights = after.blocks.flatMap((hung): Flight[] => {
    const under = flying.get(hung.block);
    const from = under?.to ?? (held?.block === hung.block ? held : old.get(hung.block));
    if (!from) return [];
    const there = lieOf(hung);
    const to = { at: there.at, degrees: from.degrees + turnFrom(from.degrees, there.degrees) };
    if (!under && sameLie(from, to)) return [];
    return [{ hung, from: under?.from ?? from, to }];
  });
  return flights.length > MOST_FLIGHTS ? [] : flights;
}

/** Where a block that hangs lies. */
export function lieOf(hung: HungBlock): Lie {
  return { at: hung.centre, degrees: hung.quarters * 90 + hung.tilt };
}

function sameLie(one: Lie, other: Lie): boolean {
  return one.at.x === other.at.x && one.at.y === other.at.y && one.degrees === other.degrees;
}

function sameShape(one: Drawing, other: Drawing): boolean {
  return (
    one.width === other.width &&
    one.height === other.height &&
    one.tilt === other.tilt &&
    one.block.width === other.block.width &&
    one.block.height === other.block.height
  );
}
