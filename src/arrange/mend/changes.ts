// Single changes as a maker would make them at the wall, as data: their cost before they are made, making and unmaking them
// on a living wall, and their words.
import { stepsPerTurn, turnsOf } from '../../model/find';
import { type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import type { LiveWall } from '../live/liveWall';

/** Places are block × N + place; orientations and wedge types as in balance/wall/wallModel. */
export type Change =
  | { readonly kind: 'turn'; readonly block: number; readonly stands: number }
  | { readonly kind: 'swap'; readonly cell: number; readonly other: number }
  | { readonly kind: 'trade'; readonly place: number; readonly other: number }
  /** A wedge that is left over for the one in a place. */
  | { readonly kind: 'replace'; readonly place: number; readonly wedge: number };

/** What a change would add to the score; the wall is as before. */
export function costOf(wall: LiveWall, change: Change): number {
  switch (change.kind) {
    case 'turn': {
      const was = wall.orientationOf[change.block]!;
      const added = wall.turn(change.block, change.stands);
      wall.turn(change.block, was);
      return added;
    }
    case 'swap':
      return wall.swapCost(change.cell, change.other, ...standingsIn(wall, change));
    case 'trade':
      return wall.tradeCost(change.place, change.other);
    case 'replace':
      return wall.replaceCost(change.place, change.wedge);
    default:
      return change satisfies never;
  }
}

/** Makes a change on the wall and returns the change that takes it back. */
export function make(wall: LiveWall, change: Change): Change {
  switch (change.kind) {
    case 'turn': {
      const was = wall.orientationOf[change.block]!;
      wall.turn(change.block, change.stands);
      return { ...change, stands: was };
    }
    case 'swap': {
      const orientations = standingsIn(wall, change);
      wall.swap(
        change.cell,
        change.other,
        ...orientations,
        wall.swapCost(change.cell, change.other, ...orientations),
      );
      return change;
    }
    case 'trade':
      wall.trade(change.place, change.other, wall.tradeCost(change.place, change.other));
      return change;
    case 'replace': {
      const oldType = wall.typeAt[change.place]!;
      wall.replace(change.place, change.wedge, wall.replaceCost(change.place, change.wedge));
      return { ...change, wedge: oldType };
    }
    default:
      return change satisfies never;
  }
}

/** Blocks that a change touches. */
export function touched(wall: LiveWall, change: Change): number[] {
  const blockAt = (place: number) => Math.floor(place / wall.tables.model.perBlock);
  switch (change.kind) {
    case 'turn':
      return [change.block];
    case 'swap':
      return [wall.blockIn[change.cell]!, wall.blockIn[change.other]!];
    case 'trade':
      return [blockAt(change.place), blockAt(change.other)];
    case 'replace':
      return [blockAt(change.place)];
    default:
      return change satisfies never;
  }
}

function standingsIn(wall: LiveWall, change: Extract<Change, { kind: 'swap' }>): [number, number] {
  return [wall.orientationOf[wall.blockIn[change.cell]!]!, wall.orientationOf[wall.blockIn[change.other]!]!];
}

/** A change in words, as the wall stands before it. */
export function changeWords(project: Project, wall: LiveWall, change: Change): Phrase {
  const { perBlock } = project.wedge;
  const number = (block: number) => project.blocks[block]!.number;
  switch (change.kind) {
    case 'turn':
      return turnWords(project, number(change.block), change.stands - wall.orientationOf[change.block]!);
    case 'swap':
      return phrase('Swap blocks {first} and {second}', {
        first: number(wall.blockIn[change.cell]!),
        second: number(wall.blockIn[change.other]!),
      });
    case 'trade': {
      const block = Math.floor(change.place / perBlock);
      const other = Math.floor(change.other / perBlock);
      const values = { place: (change.place % perBlock) + 1, otherPlace: (change.other % perBlock) + 1 };
      return block === other
        ? phrase('Trade the wedges in places {place} and {otherPlace} of block {block}', {
            ...values,
            block: number(block),
          })
        : phrase(
            'Trade the wedge in place {place} of block {block} for the one in place {otherPlace} of block {other}',
            {
              ...values,
              block: number(block),
              other: number(other),
            },
          );
    }
    case 'replace':
      return phrase('Trade the wedge in place {place} of block {block} for one of set {set}', {
        place: (change.place % perBlock) + 1,
        block: number(Math.floor(change.place / perBlock)),
        set: project.stripSets[change.wedge >> 1]!.label,
      });
    default:
      return change satisfies never;
  }
}

/** `by` wedge steps clockwise, any sign. */
function turnWords(project: Project, block: number, by: number): Phrase {
  const { perBlock } = project.wedge;
  const steps = stepsPerTurn(perBlock);
  const wedges = ((by % perBlock) + perBlock) % perBlock;
  if (wedges % steps !== 0) {
    const back = perBlock - wedges;
    const few = Math.min(wedges, back);
    const values = { block, wedges: few };
    if (few === 1) {
      return phrase(
        few === wedges ? 'Turn block {block} forward one wedge' : 'Turn block {block} back one wedge',
        values,
      );
    }
    return phrase(
      few === wedges
        ? 'Turn block {block} forward {wedges} wedges'
        : 'Turn block {block} back {wedges} wedges',
      values,
    );
  }
  const turns = turnsOf(perBlock);
  const quarters = ((wedges / steps) * 4) / turns;
  if (quarters === 1) return phrase('Turn block {block} a quarter', { block });
  if (quarters === 3) return phrase('Turn block {block} a quarter back', { block });
  return phrase('Turn block {block} half way round', { block });
}
