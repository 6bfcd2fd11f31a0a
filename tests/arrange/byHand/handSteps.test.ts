// The list of steps by hand: carried out it gives the wished wall, and it touches as few blocks as any way does, found by going through
// every way of small walls, blocks that look alike included.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blocksTouched, type HandStep, handSteps, movesOfStep } from '../../../src/arrange/byHand/handSteps';
import { drawBlock } from '../../../src/drawing/drawProject';
import { orientation, turnsOf } from '../../../src/model/find';
import { moved, movedIfFree } from '../../../src/model/moves';
import type { Block, Cell, Project } from '../../../src/model/project';
import { scrappyTop } from '../../balance/tops';
import { withPictures } from '../../geometry/pictured';
import { runs } from '../../runs';

type Spots = readonly (Cell | null)[];

/** A wall of two rows of three, some of whose blocks look like others, turned or not; a few cells empty, a few blocks waiting. */
const small = fc
  .record({
    seed: fc.nat(300),
    perBlock: fc.constantFrom(6 as const, 8 as const, 10 as const, 12 as const),
    /** For each block after the first: a copy of that block, or its own. */
    copies: fc.array(fc.option(fc.nat(5), { freq: 2 }), { minLength: 6, maxLength: 6 }),
    shifts: fc.array(fc.nat(3), { minLength: 6, maxLength: 6 }),
    pictures: fc.nat(63),
    symmetrical: fc.boolean(),
    order: fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6], { minLength: 7, maxLength: 7 }),
    turns: fc.array(fc.nat(3), { minLength: 6, maxLength: 6 }),
  })
  .map(({ seed, perBlock, copies, shifts, pictures, symmetrical, order, turns }) => {
    const top = scrappyTop({ rows: 2, columns: 3, seed, perBlock });
    const steps = perBlock / turnsOf(perBlock);
    copies.forEach((of, at) => {
      if (of === null || of >= at) return;
      const by = (shifts[at]! * steps) % perBlock;
      const { places } = top.blocks[of]!;
      top.blocks[at]!.places = places.map((_, place) => places[(place + by) % perBlock]!);
    });
    // A block that looks the same however it is turned.
    if (symmetrical) top.blocks[5]!.places.fill(top.blocks[5]!.places[0]!);
    const mixed = withPictures(top, pictures & 0b101010);
    const now = order.slice(0, 6).map((block, at) => cellOf(mixed, block, turns[at]!));
    return withCells(mixed, now);
  });

/** Another arrangement of the same blocks: seven spots of which the last is the side table. */
const wish = fc.record({
  order: fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6], { minLength: 7, maxLength: 7 }),
  turns: fc.array(fc.nat(3), { minLength: 6, maxLength: 6 }),
});

function cellOf(project: Project, block: number, turn: number): Cell | null {
  const one = project.blocks[block];
  return one ? { block: one.id, turn: turn % turnsOf(project.wedge.perBlock), pinned: false } : null;
}

function withCells(project: Project, cells: Spots): Project {
  return { ...project, wall: { ...project.wall, cells: [...cells] } };
}

function wishedOf(project: Project, { order, turns }: { order: number[]; turns: number[] }): Project {
  return withCells(
    project,
    order.slice(0, 6).map((block, at) => cellOf(project, block, turns[at]!)),
  );
}

const drawn = new WeakMap<Block, readonly { readonly place: number; readonly words: string }[]>();

/** The pieces of a block's wedges as they are drawn, once for all its turns: the place from 0, fabric, and how far they reach. */
function pieces(project: Project, block: Block) {
  const known = drawn.get(block);
  if (known) return known;
  const found = drawBlock(project, block).flatMap(({ place, fabric, outline }) => {
    if (place === null) return [];
    const reach = outline.map(({ x, y }) => Math.hypot(x, y).toFixed(3)).sort();
    return [{ place: place - 1, words: `${fabric} ${reach[0]} ${reach.at(-1)}` }];
  });
  drawn.set(block, found);
  return found;
}

/** What a block shows on the wall, from the drawing of its pieces: their fabrics and widths in each direction. */
function seen(project: Project, block: Block | undefined, turn: number): string {
  if (!block) return 'nothing';
  if (block.kind === 'pictured') return `${block.picture} ${turn}`;
  const { perBlock } = project.wedge;
  const stands = orientation(block, turn, project.wedge);
  const round = Array.from({ length: perBlock }, () => [] as string[]);
  for (const { place, words } of pieces(project, block)) round[(place + stands) % perBlock]!.push(words);
  return `${block.cornerFabric} ${JSON.stringify(round)}`;
}

function shown(project: Project): string[] {
  return project.wall.cells.map((cell) =>
    seen(
      project,
      project.blocks.find(({ id }) => id === cell?.block),
      cell?.turn ?? 0,
    ),
  );
}

/** The fewest blocks that any way to the wished look touches: every order of the blocks in the cells and every turn. */
function fewest(project: Project, wished: Project): number {
  const want = shown(wished);
  const turns = turnsOf(project.wedge.perBlock);
  const now = new Map(project.wall.cells.map((cell, at) => [cell?.block, { at, turn: cell?.turn }]));
  const looks = project.blocks.map((block) => Array.from({ length: turns }, (_, turn) => seen(project, block, turn)));
  let best = Number.POSITIVE_INFINITY;
  const used = new Set<number>();
  const fill = (cell: number, touched: number) => {
    if (touched >= best) return;
    if (cell === want.length) {
      // Blocks that hung and hang no more were taken down.
      const down = project.blocks.filter(({ id }, at) => !used.has(at) && now.has(id)).length;
      best = Math.min(best, touched + down);
      return;
    }
    if (want[cell] === 'nothing') {
      fill(cell + 1, touched);
      return;
    }
    looks.forEach((own, at) => {
      if (used.has(at)) return;
      own.forEach((look, turn) => {
        if (look !== want[cell]) return;
        const was = now.get(project.blocks[at]!.id);
        used.add(at);
        fill(cell + 1, touched + (was?.at === cell && was.turn === turn ? 0 : 1));
        used.delete(at);
      });
    });
  };
  fill(0, 0);
  return best;
} // biome-ignore format: short

function carriedOut(project: Project, steps: readonly HandStep[]): Project {
  return steps.reduce((now, step) => {
    const { project: next, reason } = movedIfFree(now, movesOfStep(step));
    if (!next) throw new Error(reason.say);
    return next;
  }, project);
}

describe('the list of steps by hand', () => {
  it('carried out step by step gives a wall that looks as wished', () => {
    fc.assert(
      fc.property(small, wish, (project, wished) => {
        const then = wishedOf(project, wished);
        expect(shown(carriedOut(project, handSteps(project, then)))).toEqual(shown(then));
      }),
      { numRuns: runs(78, 400), seed: 1211 },
    );
  });

  it('touches as few blocks as any way does', () => {
    fc.assert(
      fc.property(small, wish, (project, wished) => {
        const then = wishedOf(project, wished);
        const steps = handSteps(project, then);
        const carried = steps.flatMap(({ carries }) => carries.map(({ block }) => block));
        expect(new Set(carried).size).toBe(carried.length);
        expect(blocksTouched(steps)).toBe(fewest(project, then));
      }),
      { numRuns: runs(100, 400), seed: 1212 },
    );
  });

  it('moves every block to where there is room for it at that moment', () => {
    fc.assert(
      fc.property(small, wish, (project, wished) => {
        const hangs = new Map(project.wall.cells.flatMap((cell, at) => (cell ? [[at, cell.block] as const] : [])));
        for (const { kind, carries } of handSteps(project, wishedOf(project, wished))) {
          // Of a swap and a round the block that hangs where the first one goes is laid aside.
          const aside = carries.at(-1)!;
          if (kind === 'swap' || kind === 'round' || kind === 'turn') {
            expect(carries[0]!.to).toBe(aside.from);
            hangs.delete(aside.from as number);
          }
          for (const carry of carries) {
            if (carry !== aside || kind === 'row') {
              if (carry.from !== 'side table') {
                expect(hangs.get(carry.from)).toBe(carry.block);
                hangs.delete(carry.from);
              }
            }
            if (carry.to === 'side table') continue;
            expect(hangs.has(carry.to)).toBe(false);
            hangs.set(carry.to, carry.block);
          }
        }
      }),
      { numRuns: runs(130, 400), seed: 1213 },
    );
  }); // biome-ignore format: short

  it('names turns first, then swaps, then the shortest rounds, and breaks a permutation into its cycles', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(Array.from({ length: 20 }, (_, at) => at), { minLength: 20, maxLength: 20 }), fc.array(fc.nat(3), { minLength: 20, maxLength: 20 }), (order, turns) => {
        const top = withPictures(scrappyTop({ rows: 4, columns: 5, seed: 3 }), 2 ** 20 - 1);
        const then = withCells(top, order.map((block, at) => cellOf(top, block, turns[at]!)));
        const steps = handSteps(top, then);
        // The cycles of the permutation, counted by hand.
        const cycles: number[] = [];
        const seenCells = new Set<number>();
        order.forEach((_, start) => {
          let length = 0;
          for (let at = start; !seenCells.has(at); at = order[at]!) {
            seenCells.add(at);
            length += 1;
          }
          const still = length === 1 && then.wall.cells[start]!.turn === top.wall.cells[start]!.turn;
          if (length > 0 && !still) cycles.push(length);
        });
        expect(steps.map(({ carries }) => carries.length)).toEqual(cycles.toSorted((one, other) => one - other));
        expect(steps.map(({ kind }) => kind)).toEqual(cycles.toSorted((one, other) => one - other).map((length) => (length === 1 ? 'turn' : length === 2 ? 'swap' : 'round')));
      }),
      { numRuns: runs(67, 200), seed: 1214 },
    );
  }); // biome-ignore format: short

  it('has nothing to do where blocks that look alike have changed places', () => {
    const top = scrappyTop({ rows: 2, columns: 3, seed: 8 });
    top.blocks[4]!.places = [...top.blocks[1]!.places];
    top.wall.cells[4]!.turn = top.wall.cells[1]!.turn;
    const swapped = moved(top, [{ kind: 'swap', cell: 1, other: 4 }]);
    expect(handSteps(top, swapped)).toEqual([]);
  });

  it('works for a wall of the largest size in one long round', () => {
    const top = scrappyTop({ rows: 40, columns: 40, seed: 1 });
    const pictured: Project = {
      ...top,
      blocks: top.blocks.map((block) => ({ ...block, kind: 'pictured', picture: '0'.repeat(64), wedges: [], places: [] })),
    };
    const cells = pictured.wall.cells;
    const then = withCells(pictured, cells.map((_, at) => cells[(at + 1) % cells.length]!));
    const steps = handSteps(pictured, then);
    expect(steps.map(({ kind, carries }) => [kind, carries.length])).toEqual([['round', 1600]]);
    expect(carriedOut(pictured, steps).wall.cells).toEqual(then.wall.cells);
  }); // biome-ignore format: short

  it('refuses a wished wall of other blocks', () => {
    const top = scrappyTop({ rows: 2, columns: 3, seed: 8 });
    const other = structuredClone(top);
    other.wall.cells[0] = { ...top.wall.cells[1]! };
    expect(() => handSteps(top, other)).toThrow('other blocks');
  });
});
