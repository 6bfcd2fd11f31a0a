// The strips on hand laid as they are, held against every way to share a few strips out to sets.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { afterCutting } from '../../../src/cutting/plan/afterCutting';
import { asTheyAre, cuttingPlan, makingAsTheyAre } from '../../../src/cutting/plan/asTheyAre';
import { clothBasket } from '../../../src/cutting/plan/clothBasket';
import { usualWidths } from '../../../src/cutting/plan/planStrips';
import { makeSets } from '../../../src/cutting/sets/randomSets';
import { wedgesAtMost } from '../../../src/cutting/sets/wedgesAtMost';
import { wedgesOnLength } from '../../../src/cutting/wedges/yield';
import { apply } from '../../../src/editing/apply';
import { laySets } from '../../../src/editing/commands/stripSets';
import { speak } from '../../../src/model/phrase';
import type { Project, StripOnHand, WedgePlan } from '../../../src/model/project';
import { flatHeight, usualWedge } from '../../geometry/strips';
import { runs } from '../../runs';
import { plainFabrics, projectOf, stripsOf } from '../fabrics';
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
      { seed, numRuns: runs(20, 120) },
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
      'No more blocks can be made from the strips as they are.',
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
  const widths = usualWidths('in');
  const planOf = (project: Project, of = widths) => {
    const { sets } = makeSets(makingAsTheyAre(project)!);
    return { sets, plan: cuttingPlan(project, clothBasket(project, of), sets) };
  };
  const odd = () => {
    const { fabrics, stripsOnHand } = oddStrips();
    return projectOf({ fabrics: [...fabrics], stripsOnHand: [...stripsOnHand], wedge: usualWedge });
  };

  it('is nothing where all of them are cut for fewer blocks; both answers can be used', () => {
    const { plan } = planOf(odd());
    expect(plan.lay).toBeNull();
    expect(plan.top.blocks).toBe(3);
    expect(speak(plan.words[0]!)).toBe(
      'Cutting some of them narrower, to the widths chosen here, adds no block; cutting all of them makes 3 blocks.',
    );
    expect(plan.buyFor.blocks).toBe(7);
  });

  it('is what cloth beside them makes once their sets are laid, in one command and one undo', () => {
    const clothOnHand = plainFabrics(4).map(({ id }) => ({
      id: `c ${id}`, fabric: id, kind: 'yardage' as const, stripLength: 40, depth: 9, count: 1,
    })); // biome-ignore format: short
    const project = { ...odd(), clothOnHand };
    const { sets, plan } = planOf(project);
    expect(plan.lay).toBe(sets);
    expect(plan.top.blocks).toBeGreaterThan(7);
    const more = plan.top.blocks - 7;
    expect(speak(plan.words[0]!)).toBe(
      `Cutting fabric, and cutting strips narrower, to the widths chosen here, once those sets are laid: ${plan.top.blocks} blocks, ${more} more.`,
    );
    const after = afterCutting(project, plan.top.pieces, project.wedge.seam);
    const done = apply(project, laySets(project, sets, after));
    expect(done.ok && done.project.stripSets).toEqual(sets);
    expect(done.ok && done.project.stripsOnHand).toEqual(after.stripsOnHand);
    // The sets keep their strips: with what was cut, as many blocks as were said can be made.
    const then = done.ok ? done.project : project;
    const anew = makeSets({ ...makingAsTheyAre(then)!, want: { blocks: plan.top.blocks } });
    expect(asTheyAre(then, anew.sets).blocks).toBe(plan.top.blocks);
  });

  it('is to cut all of them where wide strips would make sets much too high', () => {
    const fabrics = plainFabrics(6);
    const stripsOnHand = stripsOf(fabrics, [[7, 4]]); // biome-ignore format: short
    const project = projectOf({ fabrics, stripsOnHand, wedge: usualWedge });
    const { plan } = planOf(project, [
      { width: 1.5, part: 1 },
      { width: 2, part: 1 },
    ]);
    expect(plan.lay).toBeNull();
    expect(speak(plan.words[0]!)).toMatch(/instead of laying them as they are: \d+ blocks, \d+ more\.$/);
  });
});

describe('laying the sets', () => {
  it('puts them beside those there are, and is refused where the sets have changed meanwhile', () => {
    const { fabrics, stripsOnHand } = oddStrips();
    const project = projectOf({ fabrics: [...fabrics], stripsOnHand: [...stripsOnHand], wedge: usualWedge });
    const { sets } = makeSets(makingAsTheyAre(project)!);
    const begun = { ...project, stripSets: sets.slice(0, 1) };
    const done = apply(begun, laySets(begun, sets.slice(1)));
    expect(done.ok && done.project.stripSets).toEqual(sets);
    expect(apply(project, laySets(begun, sets.slice(1))).ok).toBe(false);
  });
});
