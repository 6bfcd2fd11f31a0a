// The strips on hand laid as they are, held against every way to share a few strips out to sets.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asTheyAre, cuttingWords, makingAsTheyAre } from '../../../src/cutting/plan/asTheyAre';
import { makeSets } from '../../../src/cutting/sets/randomSets';
import { wedgesAtMost } from '../../../src/cutting/sets/wedgesAtMost';
import { wedgesOnLength } from '../../../src/cutting/wedges/yield';
import { speak } from '../../../src/model/phrase';
import type { StripOnHand, WedgePlan } from '../../../src/model/project';
import { flatHeight, usualWedge } from '../../geometry/strips';
import { projectOf } from '../fabrics';
import { anyStripBasket, makingOf, oddStrips } from '../sets/oddStrips';

const seed = 62_040;
/** As many strips as every choice of can be looked at. */
const FEW = 12;

/** The most wedges of any sets of two wedges or more, every way to share the strips out tried. */
function mostWedges(rows: readonly StripOnHand[], wedge: WedgePlan): number {
  const strips = rows.flatMap((row) => Array.from({ length: row.count }, () => row));
  const all = 2 ** strips.length;
  const worth = Array.from({ length: all }, (_, choice) => {
    const chosen = strips.filter((__, at) => choice & (1 << at));
    const height = flatHeight(chosen, wedge.seam);
    if (height < wedge.cutHeight - 1e-9) return 0;
    const counts = new Map<string, number>();
    for (const { fabric } of chosen) counts.set(fabric, (counts.get(fabric) ?? 0) + 1);
    if (Math.max(...counts.values()) * 2 > chosen.length + 1) return 0;
    const wedges = wedgesOnLength(Math.min(...chosen.map((one) => one.length)), height, wedge);
    return wedges < 2 ? 0 : wedges;
  });
  const best = [...worth];
  for (let choice = 1; choice < all; choice += 1) {
    // The strip of the highest number lies in some set, or in none.
    const top = 1 << (31 - Math.clz32(choice));
    const rest = choice ^ top;
    for (let part = rest; part > 0; part = (part - 1) & rest) {
      const with_ = worth[part ^ top]! + best[rest ^ part]!;
      if (with_ > best[choice]!) best[choice] = with_;
    }
    best[choice] = Math.max(best[choice]!, best[rest]!, worth[top]! + best[rest]!);
  }
  return best[all - 1]!;
}

describe('the largest top from strips as they are', () => {
  it('is never more than all ways give, is that where it says proved, and mostly is it anyway', () => {
    let [all, some, proved, reached] = [0, 0, 0, 0];
    fc.assert(
      fc.property(anyStripBasket, (basket) => {
        const { fabrics, stripsOnHand, wedge } = makingOf(basket);
        // Narrow strips and those too short are no choice; no more strips than can be looked through.
        let open = FEW;
        const few = stripsOnHand
          .filter((row) => row.width > 2 * wedge.seam && wedgesOnLength(row.length, wedge.cutHeight + 1, wedge) > 1)
          .map((row) => {
            const count = Math.min(open, row.count);
            open -= count;
            return { ...row, count };
          })
          .filter((row) => row.count > 0);
        fc.pre(few.length > 0);
        const project = projectOf({ fabrics: [...fabrics], stripsOnHand: few, wedge });
        const { sets } = makeSets(makingAsTheyAre(project)!);
        const found = asTheyAre(project, sets);
        const most = mostWedges(few, wedge);
        expect(found.wedges).toBeLessThanOrEqual(most);
        expect(wedgesAtMost(few, wedge)).toBeGreaterThanOrEqual(most);
        const blocks = Math.floor(most / wedge.perBlock);
        expect(found.blocks).toBeLessThanOrEqual(blocks);
        if (found.proved) expect(found.blocks).toBe(blocks);
        all += 1;
        if (most > 0) some += 1;
        if (found.proved) proved += 1;
        if (found.wedges === most) reached += 1;
      }),
      { seed, numRuns: 120 },
    ); // biome-ignore format: short
    expect(some / all).toBeGreaterThan(0.4);
    expect(proved / all).toBeGreaterThan(0.8);
    expect(reached / all).toBeGreaterThan(0.9);
  }, 600_000);

  it('of eight fabrics with five odd strips each is six blocks and more, 28 × 42, and proved', () => {
    const { fabrics, stripsOnHand } = oddStrips();
    const project = projectOf({ fabrics: [...fabrics], stripsOnHand: [...stripsOnHand], wedge: usualWedge });
    const { sets } = makeSets(makingAsTheyAre(project)!);
    const found = asTheyAre(project, sets);
    expect(found.words.map((words) => speak(words))).toEqual([
      'With your strips as they are: 6 sets, 60 wedges, 7 blocks, 28" × 42" with 1 block over.',
      'More blocks cannot be made of the strips as they are.',
    ]);
  });

  it('counts the sets there are, and takes none of their strips', () => {
    const { fabrics, stripsOnHand } = oddStrips();
    const project = projectOf({ fabrics: [...fabrics], stripsOnHand: [...stripsOnHand], wedge: usualWedge });
    const { sets } = makeSets(makingAsTheyAre(project)!);
    const begun = { ...project, stripSets: sets.slice(0, 3) };
    const more = makeSets(makingAsTheyAre(begun)!);
    expect(more.sets).toHaveLength(3);
    const found = asTheyAre(begun, more.sets);
    expect(found.blocks).toBe(7);
    expect(speak(found.words[0]!)).toContain('3 more sets');
    expect(makingAsTheyAre({ ...project, stripSets: sets })).toBeNull();
    const kept = project.fabrics.map((fabric) => ({ ...fabric, background: true }));
    expect(makingAsTheyAre({ ...project, fabrics: kept })).toBeNull();
  });
});

describe('what cutting adds to strips as they are', () => {
  it.each([
    [7, 3, 7, false, 'Cutting some of them narrower, to the widths chosen here, adds no block; to cut all of them makes 3 blocks.'],
    [7, 7, 7, false, 'Cutting some of them narrower, to the widths chosen here, adds no block.'],
    [7, 9, 8, false, 'Cutting some of them narrower, to the widths chosen here, instead of laying them as they are: 9 blocks, 2 more.'],
    [7, 8, 9, true, 'Cutting cloth, and strips narrower, to the widths chosen here, once those sets are laid: 9 blocks, 2 more.'],
  ])('%i as they are, %i all cut, %i with the rest cut', (asIs, all, rest, cloth, says) => {
    expect(speak(cuttingWords(asIs, all, rest, cloth))).toBe(says);
  }); // biome-ignore format: a table
});
