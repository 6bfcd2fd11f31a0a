// The line that says what is missing: whoever does what it says, one thing after another, ends with a whole top.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstLack, type Lack, makesASet } from '../../../src/cutting/plan/lacks';
import { planStrips, type StripPlan, usualWidths } from '../../../src/cutting/plan/planStrips';
import { makeSets, setMakingOf } from '../../../src/cutting/sets/randomSets';
import { wedgeLedger } from '../../../src/cutting/wedges/ledger';
import { apply } from '../../../src/editing/apply';
import { fillEmpty } from '../../../src/editing/commands/chooseWedges';
import { hangAll } from '../../../src/editing/commands/wall';
import { createBlock, createProject, createSet } from '../../../src/model/create';
import { freshId, sideTable } from '../../../src/model/find';
import type { Fabric, Project } from '../../../src/model/project';
import { demo } from '../../demo';
import { runs } from '../../runs';

const COLOURS = ['#20304a', '#b33a2b', '#e8c469', '#5c7f4b', '#7f5a8c', '#d98fa0'];

function fabric(at: number): Fabric {
  const colour = COLOURS[at % COLOURS.length]!;
  return { id: `c${at}`, name: `fabric ${at}`, colour, cloth: { kind: 'plain' }, background: false };
}

interface Start {
  readonly fabrics: number;
  readonly strips: readonly { fabric: number; width: number; count: number; length: number }[];
  readonly lowSets: number;
  readonly blocks: number;
  readonly rows: number;
  readonly perBlock: 6 | 8 | 12;
  readonly cutHeight: number;
}

const start: fc.Arbitrary<Start> = fc.record({
  fabrics: fc.integer({ min: 0, max: 6 }),
  strips: fc.array(
    fc.record({
      fabric: fc.nat(5),
      width: fc.constantFrom(1, 1.25, 1.5, 2, 2.5),
      count: fc.integer({ min: 1, max: 9 }),
      length: fc.constantFrom(18, 36, 40, 42),
    }),
    { maxLength: 8 },
  ),
  lowSets: fc.integer({ min: 0, max: 2 }),
  blocks: fc.integer({ min: 0, max: 8 }),
  rows: fc.integer({ min: 1, max: 4 }),
  perBlock: fc.constantFrom(6, 8, 12),
  cutHeight: fc.constantFrom(5, 7.5, 9),
});

function begun({ fabrics, strips, lowSets, blocks, rows, perBlock, cutHeight }: Start): Project {
  const empty = createProject('lacks', 'Lacks');
  const cloth = Array.from({ length: fabrics }, (_, at) => fabric(at));
  let project: Project = {
    ...empty,
    fabrics: [...empty.fabrics, ...cloth],
    wedge: { ...empty.wedge, perBlock, cutHeight },
    wall: { rows, columns: 2, cells: Array.from({ length: 2 * rows }, () => null) },
    stripsOnHand: strips
      .filter((row) => row.fabric < fabrics)
      .map((row, at) => ({ ...row, id: `h${at}`, fabric: `c${row.fabric}` })),
  };
  for (let at = 0; at < (fabrics > 1 ? lowSets : 0); at += 1) {
    const low = { ...createSet(project), strips: [{ fabric: `c${at}`, width: 2 }] };
    project = {
      ...withStrip(project, `c${at}`),
      stripSets: [...project.stripSets, { ...low, progress: 'sewn' as const }],
    };
  }
  for (let at = 0; at < blocks; at += 1)
    project = { ...project, blocks: [...project.blocks, createBlock(project)] };
  return project;
}

/** One strip more on hand, 2" wide: what is sewn has been on the list. */
function withStrip(project: Project, of: string): Project {
  const { stripsOnHand } = project;
  const strip = { id: freshId('h', stripsOnHand), fabric: of, width: 2, count: 1, length: 40 };
  return { ...project, stripsOnHand: [...stripsOnHand, strip] };
}

function planOf(project: Project, blocks: number): StripPlan {
  return planStrips({
    blocks,
    wedge: project.wedge,
    widths: usualWidths('in'),
    fabrics: project.fabrics.filter((one) => !one.background).map((one) => one.id),
    length: project.preferences.usableWidth,
  })!;
}

/** Does what the line says. */
function follow(project: Project, lack: Lack): Project {
  switch (lack.kind) {
    case 'fabrics':
      return { ...project, fabrics: [...project.fabrics, fabric(project.fabrics.length - 1)] };
    case 'low sets': {
      let next = project;
      const stripSets = project.stripSets.map((set) => {
        if (!lack.sets.includes(set.label)) return set;
        const strip = { fabric: `c${set.strips.length % 2}`, width: 2 };
        next = withStrip(next, strip.fabric);
        return { ...set, strips: [...set.strips, strip] };
      });
      return { ...next, stripSets };
    }
    case 'strips': {
      const plan = planOf(project, lack.blocks);
      expect(plan.strips.reduce((sum, one) => sum + one.count, 0)).toBe(lack.strips);
      const length = project.preferences.usableWidth;
      let stripsOnHand = project.stripsOnHand;
      for (const row of plan.strips)
        stripsOnHand = [...stripsOnHand, { ...row, length, id: freshId('h', stripsOnHand) }];
      return { ...project, stripsOnHand };
    }
    case 'sets': {
      const making = setMakingOf(project, 'most', 1);
      return { ...project, stripSets: [...making.keep, ...makeSets(making).sets] };
    }
    case 'blocks': {
      let next = project;
      for (let at = 0; at < lack.blocks; at += 1)
        next = { ...next, blocks: [...next.blocks, createBlock(next)] };
      return next;
    }
    case 'places':
      return done(project, fillEmpty(project, 1).command);
    case 'cells':
    case 'hung empty':
      return done(
        project,
        hangAll(
          project,
          sideTable(project)
            .filter((block) => !block.places.includes(null))
            .map((block) => block.id),
        ),
      );
  }
}

function done(project: Project, command: Parameters<typeof apply>[1]): Project {
  const outcome = apply(project, command);
  if (!outcome.ok) throw new Error(outcome.problems[0]!.message.say);
  return outcome.project;
}

const wedgesOf = (lack: Lack | null) => (lack && 'wedges' in lack ? lack.wedges : 0);

describe('what a quilt lacks', () => {
  it('each thing said and done brings a whole top nearer, until nothing is missing', () => {
    fc.assert(
      fc.property(start, (from) => {
        let project = begun(from);
        const said: string[] = [];
        for (let lack = firstLack(project); lack !== null; lack = firstLack(project)) {
          said.push(lack.kind);
          expect(said.length, said.join(', ')).toBeLessThan(30);
          const next = follow(project, lack);
          const after = firstLack(next);
          // The same thing is never said again unchanged.
          expect(after, said.join(', ')).not.toEqual(lack);
          if (lack.kind === 'strips') expect(after?.kind).toBe('sets');
          if (lack.kind === 'sets') expect(wedgesOf(after)).toBeLessThan(lack.wedges);
          if (lack.kind === 'blocks') expect(after?.kind).toBe('places');
          project = next;
        }
        expect(project.wall.cells.every((cell) => cell !== null)).toBe(true);
        expect(project.blocks.filter((block) => !block.places.includes(null)).length).toBeGreaterThanOrEqual(
          project.wall.cells.length,
        );
      }),
      { numRuns: runs(4, 40) },
    );
  });

  it('the strips it names are enough: laid as they are planned, no wedge is missing', () => {
    fc.assert(
      fc.property(start, (from) => {
        const project = begun({ ...from, fabrics: Math.max(2, from.fabrics), lowSets: 0, strips: [] });
        const lack = firstLack(project);
        if (lack?.kind !== 'strips') throw new Error(`strips are cut first, not ${lack?.kind}`);
        const plan = planOf(project, lack.blocks);
        let next = project;
        const balance = { up: 0, down: 0 };
        for (const counts of plan.perSet) {
          const strips = counts.flatMap((count, at) =>
            Array.from({ length: count }, () => ({ fabric: 'c0', width: usualWidths('in')[at]!.width })),
          );
          const firstTip = balance.up <= balance.down ? ('up' as const) : ('down' as const);
          next = { ...next, stripSets: [...next.stripSets, { ...createSet(next), strips, firstTip }] };
          const { available } = wedgeLedger(next).at(-1)!;
          balance.up += available.up;
          balance.down += available.down;
        }
        expect(wedgesOf(firstLack(next))).toBe(0);
      }),
      { numRuns: runs(24, 150) },
    );
  });

  it('makes no set where one fabric would lie beside itself, or the strips are too low or too short', () => {
    const { wedge } = createProject('a', 'A');
    const rows = (...given: [string, number, number, number][]) =>
      given.map(([fabric, width, count, length], at) => ({ id: `h${at}`, fabric, width, count, length }));
    expect(makesASet(rows(['a', 2, 9, 40]), wedge)).toBe(false);
    // 7 1/2" finished and half an inch of seams: five strips of 2" give 8", four 6 1/2".
    expect(makesASet(rows(['a', 2, 3, 40], ['b', 2, 2, 40]), wedge)).toBe(true);
    expect(makesASet(rows(['a', 2, 8, 40], ['b', 2, 1, 40]), wedge)).toBe(false);
    expect(makesASet(rows(['a', 2, 2, 40], ['b', 2, 2, 40]), wedge)).toBe(false);
    expect(makesASet(rows(['a', 2, 3, 40], ['b', 2, 2, 30]), wedge)).toBe(false);
    expect(makesASet(rows(['a', 2, 3, 4], ['b', 2, 2, 4]), wedge)).toBe(false);
  });

  it('of the demo quilts: nothing but what their story leaves to do', () => {
    expect(firstLack(demo('harbour-reading-corner'))).toBeNull();
    expect(firstLack(demo('plum-orchard'))).toBeNull();
    expect(firstLack(demo('kiln-shed'))?.kind).toBe('sets');
  });
});
