// The map of all places that name a fabric, held against the document itself: the schema says where a fabric is meant, the raw
// JSON says where its id stands. Checks, exchanges and removals follow from the map.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apply } from '../../src/editing/apply';
import { removeFabric, replaceFabric } from '../../src/editing/commands/fabrics';
import { checkReferences } from '../../src/model/check';
import { everyCloth, fabricsInUse } from '../../src/model/colourway';
import { exchangeFabrics, fabricUses, quiltUses, rowUses } from '../../src/model/fabricUses';
import { whereUsed } from '../../src/model/fabricUseWords';
import { speak } from '../../src/model/phrase';
import type { Fabric, Project } from '../../src/model/project';
import { usesInWords } from '../../src/ui/steps/fabrics/uses';
import { demo, unsewn } from '../demo';
import { withPictures } from '../geometry/pictured';
import { documents, mentions } from './schemaWalk';

const FABRICS = ['cloth-1', 'cloth-2', 'cloth-3'];
const RUNS = { numRuns: 200, seed: 4193 };
const demos = ['harbour-reading-corner', 'keepers-winter', 'kiln-shed', 'plum-orchard'] as const;

/** A demo quilt in which every part that may name a fabric does. */
function full(name: string): Project {
  const project = unsewn(demo(name));
  const [one, two, three] = [0, 1, 2].map((at) => project.fabrics.at(at)!.id) as [string, string, string];
  const made: Fabric = { ...project.fabrics[0]!, id: 'made-up', name: 'Made up' };
  return {
    ...project,
    stripsOnHand: [{ id: 'h', fabric: two, width: 2, length: 40, count: 3 }],
    clothOnHand: [{ id: 'c', fabric: three, kind: 'yardage', stripLength: 40, depth: 36, count: 1 }],
    blocks: withPictures(project, 2).blocks.map((block, at) => ({ ...block, cornerFabric: at % 2 === 0 ? two : null })),
    wall: { rows: 1, columns: 1, cells: [null] },
    setting: {
      ...project.setting,
      // Only square blocks can be set on point.
      layout: project.wedge.perBlock % 4 === 0 ? { kind: 'onPoint', sides: one, corners: three } : { kind: 'straight' },
      plain: { fabric: two, cells: 'first' },
      cornerRule: { kind: 'edge', fabric: three },
      sashing: { where: 'around', width: 1, fabric: one, cornerstones: two },
      borders: [
        { fabric: three, width: 2, corners: { kind: 'cornerstones', fabric: one } },
        { fabric: one, width: 3, keys: [{ fabric: two, width: 2 }, { fabric: three, width: 1.5 }] },
      ],
      binding: { fabric: three, cutWidth: 2.25 },
    },
    colourways: [
      { id: 'w', name: 'Worn', swaps: [{ fabric: one, by: 'made-up' }, { fabric: two, by: three }], cloth: [made] },
    ],
    buying: { ...project.buying, backing: { ...project.buying.backing, fabric: two } },
  }; // biome-ignore format: tables
}

const full4 = demos.map((name): [string, Project] => [name, full(name)]);

/** Place by place, in the order of their paths. */
function listed(rows: readonly { readonly path: string; readonly at: string }[]): string[] {
  return rows.map(({ path, at }) => `${path} = ${at}`).sort();
}

function expectAllFound(project: Project): void {
  const told = mentions(project).filter((one) => one.fabric);
  expect(listed(fabricUses(project).map(({ path, fabric }) => ({ path, at: fabric })))).toEqual(
    listed(told.map(({ path, id }) => ({ path, at: id }))),
  );
}

describe('the map of fabrics', () => {
  it('has every fabric of any document by its path, and nothing else', () => {
    fc.assert(fc.property(documents(FABRICS), expectAllFound), RUNS);
  });

  it.each(full4)('has every fabric of %s with all its parts', (_name, project) => expectAllFound(project));

  it('is held against quilts that have all its rows', () => {
    const purposes = full4.flatMap(([, project]) => fabricUses(project).map((use) => use.purpose));
    expect(new Set(purposes).size).toBe(19);
  });

  it('leaves ids of the document that are no fabric’s and no picture’s to sets, blocks and the rows themselves', () => {
    const others = /(^|[.\]])id$|^blocks\[\d+\]\.places\[\d+\]\.set$|^wall\.cells\[\d+\]\.block$/;
    fc.assert(
      fc.property(documents(FABRICS), (project) => {
        const own = mentions(project).filter((one) => !one.fabric && !one.picture);
        expect(own.filter((one) => !others.test(one.path))).toEqual([]);
      }),
      RUNS,
    );
  });

  it('writes another fabric everywhere, so that the document names the old one nowhere', () => {
    fc.assert(
      fc.property(documents(FABRICS), (project) => {
        const before = structuredClone(project);
        for (const use of fabricUses(project)) if (use.fabric === 'cloth-1') use.put('cloth-4');
        expect(JSON.stringify(project)).toBe(JSON.stringify(before).replaceAll('"cloth-1"', '"cloth-4"'));
      }),
      RUNS,
    );
  });

  it('exchanges in the quilt and leaves the rows beside it, which can be dropped one and all', () => {
    fc.assert(
      fc.property(documents(FABRICS), (project) => {
        const rows = rowUses(project).map(({ path, fabric }) => ({ path, fabric }));
        exchangeFabrics(project, (fabric) => (fabric === 'cloth-1' ? 'cloth-2' : fabric));
        expect(quiltUses(project).filter((use) => use.fabric === 'cloth-1')).toEqual([]);
        expect(rowUses(project).map(({ path, fabric }) => ({ path, fabric }))).toEqual(rows);
        for (const use of rowUses(project)) if (use.fabric === 'cloth-1') use.drop();
        expect(JSON.stringify(project)).not.toContain('"cloth-1"');
        expect(rowUses(project).map((use) => use.fabric)).toEqual(keptRows(rows));
      }),
      RUNS,
    );
  });
});

/** Fabrics of the rows of which no place names the dropped one. */
function keptRows(rows: readonly { readonly path: string; readonly fabric: string }[]): string[] {
  const row = (path: string) => path.slice(0, path.lastIndexOf('.'));
  const gone = new Set(rows.filter((one) => one.fabric === 'cloth-1').map((one) => row(one.path)));
  return rows.filter((one) => !gone.has(row(one.path))).map((one) => one.fabric);
}

describe.each(full4)('what follows from it for %s', (_name, project) => {
  it('finds each fabric that is missing, where it is named', () => {
    for (const { id } of everyCloth(project)) {
      const without = {
        ...project,
        fabrics: project.fabrics.filter((fabric) => fabric.id !== id),
        colourways: project.colourways.map((one) => ({ ...one, cloth: (one.cloth ?? []).filter((cloth) => cloth.id !== id) })),
      }; // biome-ignore format: short
      const told = mentions(project).filter((one) => one.fabric && one.id === id);
      const found = checkReferences(without).filter((one) => one.code === 'no-such-fabric');
      expect(found.map((one) => one.path).sort()).toEqual(told.map((one) => one.path).sort());
    }
  });

  it('refuses to remove what the quilt is made of, and tells every use of it', () => {
    const used = new Set(fabricsInUse(project).map((fabric) => fabric.id));
    for (const { id } of project.fabrics) {
      expect(apply(project, removeFabric(project, id)).ok).toBe(!used.has(id));
      expect(whereUsed(project, id) !== null).toBe(used.has(id));
      expect((usesInWords(project).get(id) ?? []).length > 0).toBe(used.has(id));
    }
  });

  it('removes a fabric that was replaced, with what is on hand of it and stands for it', () => {
    const [one, two] = project.fabrics.map((fabric) => fabric.id) as [string, string];
    const replaced = apply(project, replaceFabric(project, two, one));
    if (!replaced.ok) throw new Error('not replaced');
    const removed = apply(replaced.project, removeFabric(replaced.project, two));
    if (!removed.ok) throw new Error('not removed');
    expect(mentions(removed.project).filter((mention) => mention.fabric && mention.id === two)).toEqual([]);
    expect(removed.project.colourways[0]!.swaps).toEqual([{ fabric: one, by: 'made-up' }]);
    expect(removed.project.stripsOnHand).toEqual([]);
    expect(removed.project.clothOnHand).toEqual(project.clothOnHand);
  });
});

it('a border whose cloth shows is told beside a pieced one of the same', () => {
  const project = full('kiln-shed');
  const { id } = project.fabrics[0]!;
  const key = { fabric: project.fabrics[1]!.id, width: 2 };
  const borders = [
    { fabric: id, width: 2, keys: [key] },
    { fabric: id, width: 2 },
  ];
  const says = (some: Project['setting']['borders']) =>
    usesInWords({ ...project, setting: { ...project.setting, borders: some } }).get(id)!.map((one) => one.say); // biome-ignore format: short
  expect(says(borders)).toContain('border');
  expect(says(borders.slice(0, 1))).not.toContain('border');
});

it('the blocks and colourways of a fabric are told, blocks in runs', () => {
  const project = unsewn(demo('harbour-reading-corner'));
  for (const { id } of project.fabrics) {
    const sets = project.stripSets
      .filter((set) => set.strips.some((strip) => strip.fabric === id))
      .map((set) => set.id);
    const numbers = project.blocks
      .filter(
        (block) =>
          block.kind !== 'pictured' && block.places.some((wedge) => wedge && sets.includes(wedge.set)),
      )
      .map((block) => block.number);
    const told = usesInWords(project)
      .get(id)!
      .map((use) => speak(use));
    const blocks = told.find((use) => /^blocks? /.test(use));
    const read = (blocks?.match(/\d+(–\d+)?/g) ?? []).flatMap((run) => {
      const [from, to = from] = run.split('–').map(Number) as [number, number?];
      return Array.from({ length: to - from + 1 }, (_, at) => from + at);
    });
    expect(read).toEqual(numbers);
    const colourways = project.colourways.filter(({ swaps }) =>
      swaps.some(({ fabric, by }) => fabric === id || by === id),
    );
    for (const { name } of colourways) expect(told.join()).toContain(name);
    expect(told.some((use) => use.startsWith('colourway'))).toBe(colourways.length > 0);
  }
});
