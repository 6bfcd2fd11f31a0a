// Quilts half way through the work, with pins, locks and few wedges left, and moves of every kind on them, allowed or not.
import { wedgeLedger } from '../../src/cutting/wedges/ledger';
import { stepsPerTurn, turnsOf } from '../../src/model/find';
import type { Move } from '../../src/model/moves';
import type { Project } from '../../src/model/project';
import { awkwardTop } from '../arrange/awkwardTop';
import { dice } from '../balance/tops';

type Dice = ReturnType<typeof dice>;

/** An awkward top, partly sewn, pinned and locked; one set lies in no block, one block on the side table. */
export function partlySewn(seed: number): Project {
  const project = awkwardTop(seed, ([6, 8, 10, 12] as const)[seed % 4]!);
  const random = dice(seed + 1);
  const spare = { ...structuredClone(project.stripSets[0]!), id: 'spare', label: 'Spare' };
  project.stripSets.push(spare);
  for (const block of project.blocks) {
    if (!block.places.includes(null) && random.below(3) === 0)
      block.progress = (['octagon', 'squared', 'joined'] as const)[random.below(3)]!;
  }
  for (const cell of project.wall.cells) if (cell && random.below(6) === 0) cell.pinned = true;
  for (const set of project.stripSets) {
    if (random.below(5) === 0) set.locked = true;
    if (random.below(5) === 0) set.strips[0]!.locked = true;
  }
  for (const row of wedgeLedger(project))
    row.set.cut = { up: row.used.up + random.below(3), down: row.used.down + random.below(3) };
  return project;
}

/** So many moves in a row, of any kind, on blocks, cells and sets that are there. */
export function anyMoves(project: Project, seed: number, count: number): Move[] {
  const random = dice(seed);
  return Array.from({ length: count }, () => anyMove(project, random));
}

const KINDS = ['turn', 'shift', 'swap', 'hang', 'take', 'place', 'strips'] as const;

function anyMove(project: Project, random: Dice): Move {
  const one = <T>(list: readonly T[]): T => list[random.below(list.length)]!;
  const { perBlock } = project.wedge;
  const block = one(project.blocks).id;
  const cell = () => random.below(project.wall.cells.length);
  const turn = random.below(turnsOf(perBlock));
  const kind = one(KINDS);
  switch (kind) {
    case 'turn':
      return { kind, block, turn };
    case 'shift':
      return { kind, block, cornerShift: random.below(stepsPerTurn(perBlock)), turn };
    case 'swap':
      return { kind, cell: cell(), other: cell() };
    case 'hang':
      return { kind, block, cell: cell(), turn };
    case 'take':
      return { kind, block };
    case 'place': {
      const wedge = { set: one(project.stripSets).id, tip: one(['up', 'down'] as const) };
      return { kind, block, place: random.below(perBlock), wedge: random.below(4) === 0 ? null : wedge };
    }
    case 'strips': {
      const set = one(project.stripSets);
      const from = random.below(set.strips.length);
      const strips = [...set.strips.slice(from), ...set.strips.slice(0, from)];
      return { kind, set: set.id, strips: random.below(2) === 0 ? strips : strips.toReversed() };
    }
    default:
      return kind satisfies never;
  }
}
