// Composing, ranking and repairing on whole projects: what must hold whatever the sets are.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composeBlocks } from '../../../src/arrange/choose/compose';
import { rankWedges } from '../../../src/arrange/choose/composeRank';
import { repair } from '../../../src/arrange/choose/composeRepair';
import { besideTable, wedgeTypes } from '../../../src/arrange/choose/wedgeTypes';
import { wishesOf } from '../../../src/balance/score/wishes';
import { makeSets } from '../../../src/cutting/sets/randomSets';
import { checkWedges, wedgeLedger } from '../../../src/cutting/wedges/ledger';
import { wantedTip } from '../../../src/cutting/wedges/nesting';
import { createBlock } from '../../../src/model/create';
import { moved } from '../../../src/model/moves';
import { speak } from '../../../src/model/phrase';
import type { Block, Project } from '../../../src/model/project';
import { clashList } from '../../balance/clashList';
import { plainFabrics, projectOf, stripSet, stripsOf } from '../../cutting/fabrics';
import { runs } from '../../runs';
import { sameRims } from './rims';

const seed = 42_000;

const known = new Map<string, Project>();

/** A project of so many empty blocks with sets enough for them; the same for the same figures. */
function madeProject(blocks: number, anySeed: number, perBlock: Project['wedge']['perBlock'] = 8): Project {
  const key = `${blocks} ${anySeed} ${perBlock}`;
  const project = known.get(key) ?? freshProject(blocks, anySeed, perBlock);
  known.set(key, project);
  return project;
}

function freshProject(blocks: number, anySeed: number, perBlock: Project['wedge']['perBlock']): Project {
  const fabrics = plainFabrics(10);
  const per = Math.max(2, blocks);
  const stripsOnHand = stripsOf(fabrics, [[1, per], [1.5, per], [2, Math.ceil(per / 2)]]); // biome-ignore format: a table
  const plain = projectOf({ fabrics, stripsOnHand });
  const wedge = { ...plain.wedge, perBlock };
  const { sets } = makeSets({
    fabrics,
    lookalikes: 10,
    stripsOnHand,
    wedge,
    keep: [],
    want: { blocks },
    seed: anySeed,
  });
  let project: Project = { ...plain, wedge, stripSets: sets };
  for (let block = 0; block < blocks; block += 1) {
    project = { ...project, blocks: [...project.blocks, createBlock(project)] };
  }
  return project;
}

const ids = (project: Project) => project.blocks.map((block) => block.id);
/** Clashes of the list along seams of a place (from 0) of a block. */
const listedAt = (project: Project, block: Block['id'], place: number) =>
  clashList(project, wishesOf(project.preferences)).filter(
    (clash) => clash.settingPart === null && clash.blocks[0] === block && clash.places.includes(place + 1),
  );
const inchesOf = (clashes: readonly { weight: number }[]) =>
  clashes.reduce((sum, one) => sum + one.weight, 0);

describe('blocks composed', () => {
  it.each([6, 8, 10, 12] as const)(
    'with %d wedges are whole, tip up and down in turn, without a fabric meeting itself on a rim, from no more wedges than there are',
    (perBlock) => {
      const project = madeProject(6, 3, perBlock);
      const made = composeBlocks(project, 6, 1);
      const after = moved(project, made.moves);
      expect(made.made).toHaveLength(6);
      expect(made.proved).toBe('none');
      expect(checkWedges(after)).toEqual([]);
      for (const block of after.blocks) {
        block.places.forEach((place, at) => {
          expect(place?.tip).toBe(wantedTip([], at));
        });
        expect(sameRims(after, block)).toBe(0);
      }
      expect(made.words.map((words) => speak(words))).toEqual([
        '6 blocks filled. No fabric meets itself on a rim.',
      ]);
    },
  );

  it('are the same for a seed, and use different sets within a block', () => {
    const project = madeProject(6, 4);
    expect(composeBlocks(project, 6, 9)).toEqual(composeBlocks(project, 6, 9));
    const after = moved(project, composeBlocks(project, 6, 9).moves);
    for (const block of after.blocks) {
      const types = new Set(block.places.map((place) => `${place!.set} ${place!.tip}`));
      expect(types.size).toBeGreaterThanOrEqual(6);
    }
  });

  it('leave sewn and pinned blocks and the blocks not asked for as they are', () => {
    const first = madeProject(6, 5);
    const whole = moved(first, composeBlocks(first, 6, 1).moves);
    const [sewn, pinned, other] = whole.blocks;
    const project: Project = {
      ...whole,
      blocks: whole.blocks.map((block) =>
        block === sewn ? { ...block, progress: 'octagon' as const } : block,
      ),
      wall: {
        ...whole.wall,
        cells: [{ block: pinned!.id, turn: 0, pinned: true }, ...whole.wall.cells.slice(1)],
      },
    };
    const asked = ids(project).filter((id) => id !== other!.id);
    const made = composeBlocks(project, asked, 77);
    expect([...made.made].sort()).toEqual(asked.slice(2).sort());
    const after = moved(project, made.moves);
    expect(after.blocks.slice(0, 3).map((block) => block.places)).toEqual(
      project.blocks.slice(0, 3).map((block) => block.places),
    );
    expect(checkWedges(after)).toEqual([]);
  });

  it('are as many as the wedges allow, and the words say what the others lack', () => {
    const project = { ...madeProject(2, 6) };
    const more = Array.from({ length: 6 }).reduce<Project>(
      (grown) => ({ ...grown, blocks: [...grown.blocks, createBlock(grown)] }),
      project,
    );
    const made = composeBlocks(more, ids(more), 1);
    const [up, down] = (['up', 'down'] as const).map((tip) =>
      wedgeLedger(more).reduce((sum, row) => sum + row.available[tip], 0),
    );
    expect(made.made).toHaveLength(Math.floor(Math.min(up!, down!) / 4));
    expect(made.made.length + made.leftOut.length).toBe(8);
    const need = 8 * 4;
    expect(speak(made.words[1]!)).toContain(`${need - up!} more tip up and ${need - down!} more tip down`);
  });

  it('the words name only the tips that lack', () => {
    const strips = [{ fabric: 'f1', width: 5 }, { fabric: 'f2', width: 4 }]; // biome-ignore format: short
    const fabrics = plainFabrics(2);
    for (const [cut, words] of [
      [{ up: 4, down: 3 }, 'cut 1 more tip down.'],
      [{ up: 2, down: 4 }, 'cut 2 more tip up.'],
    ] as const) {
      const project = projectOf({ fabrics, stripSets: [{ ...stripSet('s1', strips), cut }] });
      const grown = { ...project, blocks: [createBlock(project)] };
      const said = composeBlocks(grown, 1, 1)
        .words.map((one) => speak(one))
        .join(' ');
      expect(said).toBe(`Not enough wedges for 1 block: ${words}`);
    }
  });

  it('count background cloth on a rim as no clash', () => {
    const fabrics = plainFabrics(4).map((fabric, at) => ({ ...fabric, background: at === 0 }));
    const strips = [{ fabric: 'f1', width: 4.5 }, { fabric: 'f2', width: 2 }, { fabric: 'f1', width: 3 }]; // biome-ignore format: short
    const project = projectOf({ fabrics, stripSets: [stripSet('s1', strips)] });
    const grown = { ...project, blocks: [createBlock(project)] };
    const made = composeBlocks(grown, 1, 1);
    expect([made.made.length, made.rimClashes, made.proved]).toEqual([1, 0, 'none']);
  });

  it('without wedges there is nothing to compose', () => {
    const project = projectOf({});
    const grown = { ...project, blocks: [createBlock(project)] };
    const made = composeBlocks(grown, 5, 1);
    expect([made.moves, made.made, made.leftOut]).toEqual([[], [], ['b1']]);
    expect(speak(made.words[0]!)).toBe(
      'Not enough wedges for 1 block: cut 4 more tip up and 4 more tip down.',
    );
  });
});

describe('two wedges side by side', () => {
  it('clash as the list of clashes has them, whatever reads as one and whichever fabrics are background', () => {
    const plain = madeProject(6, 7);
    const pairs = fc.record({
      greys: fc.array(fc.tuple(fc.integer({ min: 60, max: 140 }), fc.boolean()), {
        minLength: 10,
        maxLength: 10,
      }),
      lookalikes: fc.integer({ min: 0, max: 40 }),
      one: fc.nat(30),
      other: fc.nat(30),
    });
    let rims = 0;
    let background = 0;
    fc.assert(
      fc.property(pairs, ({ greys, lookalikes, one, other }) => {
        const fabrics = plain.fabrics.map((fabric, at) => ({
          ...fabric,
          colour: `#${greys[at]![0].toString(16).padStart(2, '0').repeat(3)}`,
          background: greys[at]![1],
        }));
        const project = { ...plain, fabrics, preferences: { ...plain.preferences, lookalikes } };
        const types = wedgeTypes(project);
        const [here, next] = [types[one % types.length]!, types[other % types.length]!];
        const found = besideTable(project)(here, next);
        const places = [here.wedge, next.wedge, null, null, null, null, null, null];
        const blocks = [{ ...project.blocks[0]!, places }];
        const listed = listedAt({ ...project, blocks }, blocks[0]!.id, 0);
        const same = listed.filter((clash) => clash.fabrics[0] === clash.fabrics[1]);
        const alike = listed.filter((clash) => clash.fabrics[0] !== clash.fabrics[1]);
        expect(found.same).toBeCloseTo(inchesOf(same), 9);
        // Below the likeness from which a clash is listed the inches still count.
        expect(found.alike).toBeGreaterThan(inchesOf(alike) - 1e-9);
        expect(found.rimClash).toBe(same.some((clash) => clash.kind === 'rim') ? 1 : 0);
        expect(found.rimAlike).toBe(alike.some((clash) => clash.kind === 'rim') ? 1 : 0);
        rims += found.rimClash + found.rimAlike;
        if (fabrics.some((fabric) => fabric.background && here.rim === fabric.id)) background += 1;
      }),
      { seed, numRuns: runs(67, 200) },
    );
    expect(Math.min(rims, background)).toBeGreaterThan(runs(3, 10));
  });
});

describe('wedges offered for a place', () => {
  const first = madeProject(6, 8);
  const project = moved(first, composeBlocks(first, 6, 2).moves);

  it('are ranked by cost, of the tip that nests, and each offer keeps the ledger when taken', () => {
    for (const place of [0, 3]) {
      const offers = rankWedges(project, 'b2', place);
      expect(offers.length).toBeGreaterThan(3);
      const nesting = offers.filter((offer) => offer.rightTip);
      expect(offers.slice(0, nesting.length)).toEqual(nesting);
      nesting.slice(1).forEach((offer, at) => {
        const rims = (one: typeof offer) => one.fit.rimClashes + one.elsewhere.rimClashes;
        expect(rims(offer)).toBeGreaterThanOrEqual(rims(nesting[at]!));
      });
      for (const offer of offers) {
        expect(offer.wedge.tip === wantedTip([], place)).toBe(offer.rightTip);
        if (offer.from !== 'leftOver') expect(offer.rightTip).toBe(true);
        const after = moved(project, offer.moves);
        expect(checkWedges(after)).toEqual([]);
        const block = after.blocks.find((one) => one.id === 'b2')!;
        const same = listedAt(after, block.id, place).filter((clash) => clash.likeness === 1);
        expect(offer.fit.same).toBeCloseTo(inchesOf(same), 9);
        expect(offer.fit.rimClashes).toBe(same.filter((clash) => clash.kind === 'rim').length);
      }
    }
  });

  it('are none for a sewn or unknown block', () => {
    const sewn = {
      ...project,
      blocks: project.blocks.map((one) => ({ ...one, progress: 'octagon' as const })),
    };
    expect(rankWedges(sewn, 'b2', 0)).toEqual([]);
    expect(rankWedges(project, 'gone', 0)).toEqual([]);
    expect(rankWedges(project, 'b2', 8)).toEqual([]);
  });
});

describe('a plan repaired after wedges were lost', () => {
  it('uses no wedge that is not there, makes no rim clash, and changes no more places than it must', () => {
    fc.assert(
      fc.property(fc.nat(400), fc.array(fc.nat(59), { minLength: 1, maxLength: 4 }), (anySeed, losses) => {
        const first = madeProject(6, anySeed % 5);
        const project = moved(first, composeBlocks(first, 6, anySeed).moves);
        const types = wedgeTypes(project);
        const lost: Project = {
          ...project,
          stripSets: project.stripSets.map((set) => {
            const row = wedgeLedger(project).find((one) => one.set.id === set.id)!;
            const cut = { ...row.available };
            for (const loss of losses) {
              const type = types[loss % types.length]!;
              if (type.wedge.set === set.id) cut[type.wedge.tip] = Math.max(0, cut[type.wedge.tip] - 1);
            }
            return { ...set, cut };
          }),
        };
        const over = wedgeLedger(lost).reduce(
          (sum, row) => sum + Math.max(0, -row.left.up) + Math.max(0, -row.left.down),
          0,
        );
        const mended = repair(lost);
        const after = moved(lost, mended.moves);
        expect(checkWedges(after)).toEqual([]);
        expect(mended.stuck).toBe(0);
        expect(mended.moves.length).toBeGreaterThanOrEqual(over);
        expect(mended.moves.length).toBeLessThanOrEqual(2 * over);
        if (mended.smallest) expect(mended.moves.length).toBe(over);
        if (mended.empty === 0) {
          for (const block of after.blocks) expect(sameRims(after, block)).toBe(0);
        }
      }),
      { seed, numRuns: runs(5, 25) },
    );
  });

  it('fills places that stand empty in blocks that have wedges, and leaves a whole plan alone', () => {
    const first = madeProject(6, 2);
    const project = moved(first, composeBlocks(first, 6, 2).moves);
    expect(repair(project)).toMatchObject({ moves: [], empty: 0, stuck: 0, smallest: true });
    const gap = moved(project, [{ kind: 'place', block: 'b3', place: 5, wedge: null }]);
    const mended = repair(gap);
    expect(mended.moves.length).toBeLessThanOrEqual(2);
    expect(moved(gap, mended.moves).blocks.every((block) => block.places.every(Boolean))).toBe(true);
  });

  it('says when a lost wedge lies in a sewn block, and when nothing is left to put in its place', () => {
    const strips = [{ fabric: 'f1', width: 4.5 }, { fabric: 'f2', width: 4.5 }]; // biome-ignore format: short
    const plain = projectOf({ stripSets: [stripSet('s1', strips, { cut: { up: 4, down: 4 } })] });
    const empty = { ...plain, blocks: [createBlock(plain)] };
    const project = moved(empty, composeBlocks(empty, 1, 1).moves);
    const fewer = {
      ...project,
      stripSets: project.stripSets.map((set) => ({ ...set, cut: { up: 3, down: 4 } })),
    };
    const mended = repair(fewer);
    expect([mended.moves.length, mended.empty, mended.stuck]).toEqual([1, 1, 0]);
    expect(checkWedges(moved(fewer, mended.moves))).toEqual([]);
    const sewn = {
      ...fewer,
      blocks: fewer.blocks.map((block) => ({ ...block, progress: 'octagon' as const })),
    };
    expect(repair(sewn)).toMatchObject({ moves: [], stuck: 1 });
    expect(speak(repair(sewn).words[0]!)).toContain('1 wedge more than its set gives lies in a sewn block');
  });
});
