// Finds and proves the best arrangement of a small wall. It weighs every order of the blocks by its spread, goes through them
// from the least, and finds the best turns for each exactly, until no further order can be better.

import type { Arrangement } from '../movesBetween';
import { bestTurns, turnStates } from './bestTurns';
import { Orders } from './blockOrders';
import type { Contacts } from './contactTables';
import { LeastContact } from './leastContact';
import type { Spread } from './spreadAssignment';

/** The most orders it goes through: those of nine blocks that may change cells. */
const MOST_ORDERS = 362_880;
/** The most combinations of orientations kept while the turns are found. */
const MOST_STATES = 4096;
/** Scores that differ by less count as equal. */
const LEAST_GAIN = 1e-9;

export interface Exact extends Arrangement {
  readonly cost: number;
}

/** Whether a wall is small enough for findingBest. */
export function isSmall(contacts: Contacts, movable: number): boolean {
  let orders = 1;
  for (let count = 2; count <= movable; count++) orders *= count;
  return orders <= MOST_ORDERS && turnStates(contacts) <= MOST_STATES;
}

/** Orders gone through between two pauses: some milliseconds' worth. */
const PAUSE = 64;

/**
 * Finds the arrangement with the least score that turns and exchanges can reach; wedges keep their places. Null when none
 * scores below `known`, the score of an arrangement already found (a good one saves most of the work).
 * Yields every few milliseconds; the answer comes only at the end.
 */
export function* findingBest(
  contacts: Contacts,
  spread: Spread,
  known = Number.POSITIVE_INFINITY,
): Generator<void, Exact | null> {
  const { model } = contacts.tables;
  const { cells } = contacts.decisions;
  const least = new LeastContact(contacts);
  const orders = new Orders(contacts, spread, known - contacts.constant - least.alone);
  yield* orders.weighing();
  let best: Exact | null = null;
  let looked = 0;
  let below = known;
  const blockIn = model.blockIn.slice();
  for (const order of orders.byCost()) {
    looked += 1;
    if (looked % PAUSE === 0) yield;
    const spreadCost = orders.cost(order);
    if (contacts.constant + spreadCost + least.alone >= below - LEAST_GAIN) break;
    cells.forEach((cell, at) => {
      blockIn[cell] = orders.block(order, at);
    });
    if (contacts.constant + spreadCost + least.of(blockIn) >= below - LEAST_GAIN) continue;
    const turned = bestTurns(contacts, blockIn);
    const cost = contacts.constant + spreadCost + turned.cost;
    if (cost >= below - LEAST_GAIN) continue;
    below = cost;
    best = { cost, blockIn: blockIn.slice(), orientationOf: turned.orientationOf, typeAt: model.typeAt };
  }
  return best;
}
