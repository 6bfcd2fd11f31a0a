// The wall's rules for hands, on a demo quilt drawn at ten pixels to the inch; the side table lies left of the wall.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawProject } from '../../../../src/drawing/drawProject';
import type { Project } from '../../../../src/model/project';
import {
  type Gesture,
  type Outcome,
  type Pressed,
  type Scene,
  tapped,
  viewChange,
  wallRules,
} from '../../../../src/ui/wall/hands/gesture';
import {
  type Hand,
  type HandEvent,
  type Handling,
  handsOf,
  REST,
  type Step,
  step,
} from '../../../../src/ui/wall/hands/hands';
import { bearing, turnFrom, turnsIn } from '../../../../src/ui/wall/hands/turning';
import { demo, unsewn } from '../../../demo';
import { runs } from '../../../runs';

const SCALE = 10;
type Event = HandEvent<Pressed, Gesture>;

/** The demo without sewing, its first block taken down: cell 0 is empty and that block waits on the side table. */
function wall(): Project {
  const project = unsewn(demo('harbour-reading-corner'));
  const cells = project.wall.cells.map((cell) => cell && { ...cell, pinned: false });
  return { ...project, wall: { ...project.wall, cells: [null, ...cells.slice(1)] } };
}

function sceneOf(project: Project, picked: string | null = null, more: Partial<Scene> = {}): Scene {
  return {
    project,
    picked,
    swapping: false,
    larger: false,
    drawing: drawProject(project),
    toQuilt: ({ x, y }) => ({ x: x / SCALE, y: y / SCALE }),
    onTable: ({ x }) => x < 0,
    ...more,
  };
}

const QUILT = wall();
const WAITING = QUILT.blocks.find((one) => QUILT.wall.cells.every((cell) => cell?.block !== one.id))!.id;
const SCENE = sceneOf(QUILT);
const blockIn = (cell: number) => QUILT.wall.cells[cell]!.block;
const inCell = (cell: number): Pressed => ({
  kind: 'cell',
  cell,
  block: QUILT.wall.cells[cell]?.block ?? null,
});

/** The middle of a cell in the window, moved by some pixels. */
function middle(cell: number, across = 0, down = 0): { x: number; y: number } {
  const box = SCENE.drawing.emptyCells.find((one) => one.cell === cell)?.box;
  const centre =
    SCENE.drawing.blocks.find((one) => one.cell === cell)?.centre ??
    (box && { x: box.x + box.width / 2, y: box.y + box.height / 2 });
  if (!centre) throw new Error(`middle: no cell ${cell}`);
  return { x: centre.x * SCALE + across, y: centre.y * SCALE + down };
}

/** What hands come to, the outcomes in their order, and the gesture under way in the end. */
function play(scene: Scene, events: readonly Event[]) {
  let state: Handling<Pressed, Gesture> = REST;
  const outcomes: Outcome[] = [];
  for (const event of events) {
    const next: Step<Pressed, Gesture, Outcome> = step(state, event, wallRules(scene));
    state = next.state;
    if (next.outcome) outcomes.push(next.outcome);
  }
  return { outcomes, gesture: state.phase === 'busy' ? state.gesture : null, hands: handsOf(state) };
}

type At = ReturnType<typeof middle>;
const press = (what: Pressed, at: At, id = 1): Event => ({ kind: 'press', id, at, touch: true, what });
const move = (at: At, id = 1): Event => ({ kind: 'move', id, at });
const lift = (at: At, id = 1): Event => ({ kind: 'lift', id, at });
const drag = (what: Pressed, from: At, to: At): Event[] => [press(what, from), move(to), lift(to)];

describe('one hand on the wall', () => {
  it('carries a block onto another and swaps the two', () => {
    const { outcomes } = play(SCENE, drag(inCell(1), middle(1), middle(4)));
    expect(outcomes).toEqual([{ kind: 'swap', cell: 1, other: 4 }]);
  });
  it('carries a block from where it was taken hold of', () => {
    const { gesture } = play(SCENE, [press(inCell(1), middle(1, 20, -30)), move(middle(4, 25, -30))]);
    const { centre } = SCENE.drawing.blocks.find((one) => one.cell === 4)!;
    expect(gesture).toMatchObject({ kind: 'carry', block: blockIn(1), from: 1, over: 4, overTable: false });
    expect((gesture as { at: At }).at.x).toBeCloseTo(centre.x + 0.5, 9);
    expect((gesture as { at: At }).at.y).toBeCloseTo(centre.y, 9);
  });
  it('leaves a block that comes back to its cell, or is let go beside the quilt', () => {
    expect(play(SCENE, drag(inCell(1), middle(1), middle(1, 9))).outcomes).toEqual([]);
    expect(play(SCENE, drag(inCell(1), middle(1), { x: 1e5, y: 1e5 })).outcomes).toEqual([]);
  });
  it('takes a block down onto the side table', () => {
    const { outcomes } = play(SCENE, drag(inCell(1), middle(1), { x: -50, y: 100 }));
    expect(outcomes).toEqual([{ kind: 'takeDown', block: blockIn(1) }]);
  });
  it('hangs a block from the side table, and leaves one that is put back there', () => {
    const table: Pressed = { kind: 'table', block: WAITING };
    const from = { x: -50, y: 100 };
    expect(play(SCENE, drag(table, from, middle(0))).outcomes).toEqual([
      { kind: 'hang', block: WAITING, cell: 0 },
    ]);
    expect(play(SCENE, drag(table, from, { x: -90, y: 100 })).outcomes).toEqual([]);
  });
  it('says why a pinned block stays, once, and goes no further', () => {
    const cells = QUILT.wall.cells.map((cell, at) => (cell && at === 1 ? { ...cell, pinned: true } : cell));
    const pinned = sceneOf({ ...QUILT, wall: { ...QUILT.wall, cells } });
    const { outcomes } = play(pinned, [
      press(inCell(1), middle(1)),
      move(middle(2)),
      move(middle(3)),
      lift(middle(4)),
    ]);
    expect(outcomes).toMatchObject([{ kind: 'refuse', why: { say: expect.stringContaining('is pinned') } }]);
  });
  it.each([
    [90, 1],
    [-90, -1],
    [170, 2],
    [44, 0],
    [-46, -1],
  ])('turns the picked block by its handle to the nearest quarter: %s° by %s', (degrees, by) => {
    const block = blockIn(3);
    const reach = (angle: number) =>
      middle(3, 80 * Math.sin((angle * Math.PI) / 180), -80 * Math.cos((angle * Math.PI) / 180));
    const { outcomes } = play(
      sceneOf(QUILT, block),
      drag({ kind: 'handle', block }, reach(45), reach(45 + degrees)),
    );
    expect(outcomes).toEqual(by === 0 ? [] : [{ kind: 'turn', block, by }]);
  });
  it('moves the view from the ground and from an empty cell', () => {
    for (const what of [{ kind: 'ground' } as const, inCell(0)])
      expect(play(SCENE, [press(what, middle(0)), move(middle(4))]).gesture).toEqual({ kind: 'view' });
    expect(play(SCENE, drag({ kind: 'ground' }, middle(1), middle(4))).outcomes).toEqual([]);
  });
});

describe('a tap', () => {
  const table: Pressed = { kind: 'table', block: WAITING };
  it.each<[string, Pressed, string | null, Outcome | null]>([
    ['picks a block', inCell(1), null, { kind: 'pick', block: blockIn(1) }],
    ['leaves the block that was picked', inCell(1), blockIn(1), { kind: 'pick', block: null }],
    ['picks a block on the side table', table, null, { kind: 'pick', block: WAITING }],
    ['leaves the picked block on the side table', table, WAITING, { kind: 'pick', block: null }],
    ['hangs the picked block in an empty cell', inCell(0), WAITING, { kind: 'hang', block: WAITING, cell: 0 }],
    ['picks another while one waits to be hung', inCell(1), WAITING, { kind: 'pick', block: blockIn(1) }],
    ['on an empty cell leaves what hangs', inCell(0), blockIn(1), { kind: 'pick', block: null }],
    ['on the ground leaves what was picked', { kind: 'ground' }, blockIn(1), { kind: 'pick', block: null }],
    ['on the handle means nothing', { kind: 'handle', block: blockIn(1) }, blockIn(1), null],
  ])('%s', (_, what, picked, outcome) => {
    const scene = sceneOf(QUILT, picked);
    expect(tapped(what, scene)).toEqual(outcome);
    const hand = play(scene, [press(what, middle(1)), lift(middle(1))]);
    expect(hand.outcomes).toEqual(outcome ? [outcome] : []);
  }); // biome-ignore format: a table
});

describe('a tap while the picked block is to change places', () => {
  const swapping = (picked: string) => sceneOf(QUILT, picked, { swapping: true });
  it.each<[string, Pressed, Outcome]>([
    ['swaps it with the block that is tapped', inCell(4), { kind: 'swap', cell: 1, other: 4 }],
    ['moves it to the empty cell that is tapped', inCell(0), { kind: 'swap', cell: 1, other: 0 }],
    ['on itself leaves it as it hangs', inCell(1), { kind: 'pick', block: blockIn(1) }],
    ['on the ground leaves it as it hangs', { kind: 'ground' }, { kind: 'pick', block: blockIn(1) }],
  ])('%s', (_, what, outcome) => {
    const { outcomes } = play(swapping(blockIn(1)), [press(what, middle(1)), lift(middle(1))]);
    expect(outcomes).toEqual([outcome]);
  });
  it('picks as ever where the picked block waits on the side table', () => {
    expect(tapped(inCell(1), swapping(WAITING))).toEqual({ kind: 'pick', block: blockIn(1) });
  });
});

describe('one finger on a wall larger than its frame', () => {
  const cells = [0, 1, 2, 3, 4, 5];
  const spot = fc.record({ x: fc.integer({ min: -60, max: 900 }), y: fc.integer({ min: 0, max: 900 }) });
  const way = fc.array(spot, { minLength: 1, maxLength: 12 });
  const zoomed = (picked: string | null) => sceneOf(QUILT, picked, { larger: true });
  const runs = { numRuns: 2_000 };
  const dragOf = (what: Pressed, from: At, spots: readonly At[], touch = true): Event[] => [
    { kind: 'press', id: 1, at: from, touch, what },
    ...spots.map((at) => move(at)),
    lift(spots.at(-1)!),
  ];

  it('never moves a block that is not picked', () => {
    let drags = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...cells),
        fc.constantFrom(null, WAITING, ...cells.slice(1).map(blockIn)),
        way,
        (cell, picked, spots) => {
          fc.pre(cell === 0 || blockIn(cell) !== picked);
          const { outcomes } = play(zoomed(picked), dragOf(inCell(cell), middle(cell), spots));
          if (outcomes.length === 0) drags += 1;
          // A finger that hardly moved has tapped.
          for (const outcome of outcomes)
            expect(outcome.kind === 'pick' || (outcome.kind === 'hang' && outcome.block === WAITING)).toBe(
              true,
            );
          const under = play(zoomed(picked), dragOf(inCell(cell), middle(cell), spots).slice(0, -1));
          expect(under.gesture === null || under.gesture.kind === 'view').toBe(true);
        },
      ),
      runs,
    );
    expect(drags).toBeGreaterThan(1_000);
  });

  it('never pans when it comes down on the picked block', () => {
    let carried = 0;
    fc.assert(
      fc.property(fc.constantFrom(...cells.slice(1)), way, (cell, spots) => {
        const scene = zoomed(blockIn(cell));
        const events = dragOf(inCell(cell), middle(cell), spots);
        for (let end = 1; end <= events.length; end += 1) {
          const { gesture } = play(scene, events.slice(0, end));
          if (gesture === null) continue;
          carried += 1;
          expect(gesture).toMatchObject({ kind: 'carry', block: blockIn(cell), from: cell });
        }
      }),
      runs,
    );
    expect(carried).toBeGreaterThan(2_000);
  });

  it('carries any block by a mouse, and by a finger from the side table or where the whole top is in sight', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...cells.slice(1)),
        spot,
        fc.constantFrom('mouse', 'table', 'whole'),
        (cell, to, how) => {
          const what: Pressed = how === 'table' ? { kind: 'table', block: WAITING } : inCell(cell);
          const scene = how === 'whole' ? SCENE : zoomed(null);
          const from = middle(cell);
          fc.pre(Math.hypot(to.x - from.x, to.y - from.y) > 8);
          const { gesture } = play(scene, dragOf(what, from, [to], how !== 'mouse').slice(0, -1));
          expect(gesture?.kind).toBe('carry');
        },
      ),
      runs,
    );
  });
});

describe('two hands on the wall', () => {
  it('turn the picked block when both come down on it', () => {
    const block = blockIn(3);
    const start = [press(inCell(3), middle(3, -30)), press(inCell(3), middle(3, 30), 2)];
    const turned = [...start, move(middle(3, 0, -30)), move(middle(3, 0, 30), 2)];
    expect(play(sceneOf(QUILT, block), turned).gesture).toMatchObject({ kind: 'twist', block, degrees: 90 });
    const { outcomes } = play(sceneOf(QUILT, block), [
      ...turned,
      lift(middle(3, 0, 30), 2),
      move(middle(5)),
      lift(middle(5)),
    ]);
    expect(outcomes).toEqual([{ kind: 'turn', block, by: 1 }]);
    expect(play(SCENE, turned).gesture).toEqual({ kind: 'view' });
  });
  it('move the view, and the one that is left over carries nothing', () => {
    const pinch = [
      press(inCell(1), middle(1)),
      press(inCell(2), middle(2), 2),
      move(middle(1, -20)),
      move(middle(2, 20), 2),
    ];
    expect(play(SCENE, pinch).gesture).toEqual({ kind: 'view' });
    const { outcomes } = play(SCENE, [
      ...pinch,
      lift(middle(1, -20)),
      move(middle(4), 2),
      lift(middle(4), 2),
    ]);
    expect(outcomes).toEqual([]);
  });
  it('leave a block that the first of them carried', () => {
    const { outcomes } = play(SCENE, [
      press(inCell(1), middle(1)),
      move(middle(4)),
      press(inCell(2), middle(2), 2),
      lift(middle(2), 2),
      lift(middle(4)),
    ]);
    expect(outcomes).toEqual([]);
  });
});

describe('hands in any order', () => {
  const at = fc.constantFrom(
    { x: -50, y: 100 },
    { x: -90, y: 100 },
    { x: 1e5, y: 0 },
    ...[0, 1, 2, 3, 4].map((cell) => middle(cell)),
    middle(3, 40),
  );
  const id = fc.integer({ min: 1, max: 2 });
  const anyWhat = fc.constantFrom<Pressed>(
    inCell(0), inCell(1), inCell(2), inCell(3), { kind: 'table', block: WAITING },
    { kind: 'handle', block: blockIn(3) }, { kind: 'ground' },
  ); // biome-ignore format: a list
  const anyEvent = fc.oneof(
    {
      weight: 3,
      arbitrary: fc.record({ kind: fc.constant('press'), id, at, touch: fc.boolean(), what: anyWhat }),
    },
    { weight: 6, arbitrary: fc.record({ kind: fc.constant('move'), id, at }) },
    { weight: 3, arbitrary: fc.record({ kind: fc.constant('lift'), id, at }) },
    { weight: 1, arbitrary: fc.record({ kind: fc.constant('lost'), id }) },
    { weight: 1, arbitrary: fc.constant({ kind: 'cancel' }) },
  ) as fc.Arbitrary<Event>;
  const more = fc.record({ swapping: fc.boolean(), larger: fc.boolean() });
  const events = fc.array(anyEvent, { minLength: 5, maxLength: 80, size: 'max' });
  it('come to one thing at most from the first that comes down to the last that lifts, and then to rest', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(
        events,
        fc.constantFrom(null, blockIn(3), WAITING),
        at,
        more,
        (events, picked, last, has) => {
          const scene = sceneOf(QUILT, picked, has);
          const lifts = [1, 2].map((one) => lift(last, one));
          let state: Handling<Pressed, Gesture> = REST;
          let come = 0;
          for (const event of [...events, ...lifts]) {
            if (state.phase === 'rest') come = 0;
            const next: Step<Pressed, Gesture, Outcome> = step(state, event, wallRules(scene));
            if (next.outcome) come += 1;
            if (next.outcome) seen.add(next.outcome.kind);
            expect(come).toBeLessThanOrEqual(1);
            if (event.kind === 'cancel' || event.kind === 'lost') expect(next.outcome).toBe(null);
            state = next.state;
          }
          expect(state).toEqual(REST);
        },
      ),
      { numRuns: runs(400, 2_000) },
    );
    // Else the events would not reach what they are about.
    expect([...seen].sort()).toEqual(['hang', 'pick', 'swap', 'takeDown', 'turn']);
  });
});

describe('the view', () => {
  const hands = (...spots: At[]): Hand[] => spots.map((at, id) => ({ id, start: at, at, touch: true }));
  it('goes with one hand', () => {
    expect(viewChange(hands({ x: 5, y: 5 }), hands({ x: 8, y: 1 }))).toEqual({
      across: 3,
      down: -4,
      zoom: null,
    });
  });
  it('keeps under two hands what lay under them', () => {
    const spot = fc.record({ x: fc.integer({ min: 0, max: 500 }), y: fc.integer({ min: 0, max: 500 }) });
    fc.assert(
      fc.property(spot, spot, spot, (first, second, end) => {
        fc.pre(Math.hypot(first.x - second.x, first.y - second.y) > 20);
        // The second hand goes along the line between the two: no turn, which the view does not follow.
        const along = 1 + end.x / 500;
        const to = {
          x: first.x + (second.x - first.x) * along,
          y: first.y + (second.y - first.y) * along,
        };
        const change = viewChange(hands(first, second), hands(first, to))!;
        const factor = change.zoom?.factor ?? 1;
        const about = change.zoom?.about ?? first;
        const shown = ({ x, y }: At) => ({
          x: about.x + (x + change.across - about.x) * factor,
          y: about.y + (y + change.down - about.y) * factor,
        });
        for (const [before, after] of [
          [first, first],
          [second, to],
        ] as const) {
          expect(shown(before).x).toBeCloseTo(after.x, 6);
          expect(shown(before).y).toBeCloseTo(after.y, 6);
        }
      }),
    );
  });
  it('stays where a hand comes or goes', () => {
    expect(viewChange(hands({ x: 0, y: 0 }), hands({ x: 0, y: 0 }, { x: 9, y: 9 }))).toBe(null);
    expect(viewChange(hands({ x: 0, y: 0 }), [])).toBe(null);
  });
  it('does not zoom from two hands on one spot', () => {
    const change = viewChange(hands({ x: 0, y: 0 }, { x: 0, y: 0 }), hands({ x: 0, y: 0 }, { x: 4, y: 0 }));
    expect(change).toEqual({ across: 2, down: 0, zoom: null });
  });
});

describe('angles of turning', () => {
  it.each([
    [{ x: 0, y: -1 }, 0],
    [{ x: 1, y: 0 }, 90],
    [{ x: 0, y: 1 }, 180],
    [{ x: -1, y: 0 }, -90],
  ])('are clockwise from up', (to, degrees) => {
    expect(bearing({ x: 0, y: 0 }, to)).toBeCloseTo(degrees, 12);
  });
  it('go the shorter way round, from any direction to any other', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1440, max: 1440 }),
        fc.integer({ min: -1440, max: 1440 }),
        (start, end) => {
          const turn = turnFrom(start, end);
          expect(turn).toBeGreaterThanOrEqual(-180);
          expect(turn).toBeLessThan(180);
          expect(Math.abs(start + turn - end) % 360).toBe(0);
        },
      ),
    );
  });
  it('come to quarters, or to halves where blocks are not square', () => {
    expect([turnsIn(46, 4), turnsIn(89, 2), turnsIn(-91, 2)]).toEqual([1, 0, -1]);
  });
});
