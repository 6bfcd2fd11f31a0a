import { describe, expect, it } from 'vitest';
import { effectOf, type Proposal, propose } from '../../../src/arrange/mend/proposals';
import { type Analysis, analyse } from '../../../src/balance/analyse';
import { clashFinding } from '../../../src/balance/clashes/clashFindings';
import { DEFAULT_WEIGHTS, TERM_NAMES, weighted } from '../../../src/balance/score/weights';
import { apply } from '../../../src/editing/apply';
import { rearrange } from '../../../src/editing/commands/wall';
import { moved } from '../../../src/model/moves';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { scrappyTop } from '../../balance/tops';
import { demo } from '../../demo';

function everyProposal(analysis: Analysis): Proposal[] {
  return analysis.findings.flatMap((finding) => propose(finding, analysis));
}

describe('proposals for a finding', () => {
  const project = demo('harbour-reading-corner');
  const analysis = analyse(project);

  it('are there for everything found on a wall of which nothing is sewn, at most three', () => {
    for (const finding of analysis.findings) {
      const proposals = propose(finding, analysis);
      expect([finding.id, proposals.length > 0]).toEqual([finding.id, true]);
      expect(proposals.length).toBeLessThanOrEqual(3);
    }
  });

  it('mend what they are for: the clash is gone, the pool gone or much lighter', () => {
    for (const finding of analysis.findings) {
      for (const { moves } of propose(finding, analysis)) {
        const after = analyse(moved(project, moves));
        if (['rim', 'radial', 'facing', 'setting'].includes(finding.kind)) {
          const count = (one: Analysis) => one.clashes.filter((clash) => clash.kind === finding.kind).length;
          const gone = analysis.clashes.filter((clash) => !after.clashes.some((one) => one.id === clash.id));
          expect(gone.some((clash) => clash.kind === finding.kind)).toBe(true);
          expect(count(after)).toBeLessThanOrEqual(count(analysis));
        } else {
          const still = after.findings.filter((one) => one.kind === finding.kind && one.id === finding.id);
          for (const one of still) expect(one.weight).toBeLessThanOrEqual((2 / 3) * finding.weight + 1e-9);
        }
      }
    }
  });

  it('state their effect on everything else truly', () => {
    for (const { moves, effect } of everyProposal(analysis)) {
      const then = moved(project, moves);
      const after = analyse(then);
      const { terms } = after;
      expect(effect.after.total).toBeCloseTo(weighted(terms, DEFAULT_WEIGHTS), 9);
      for (const name of TERM_NAMES)
        expect(effect.change[name]).toBeCloseTo(terms[name] - analysis.terms[name], 9);
      const gone = analysis.clashes.filter((clash) => !after.clashes.some((one) => one.id === clash.id));
      for (const one of effect.mended.filter((other) => other.kind === 'rim')) {
        expect(gone.map((clash) => clash.id)).toContain(one.id);
      }
      for (const one of effect.added)
        expect(analysis.findings.map((other) => other.id)).not.toContain(one.id);
    }
  });

  it('are one small change wherever one is enough, and say it in the words of the wall', () => {
    const said = everyProposal(analysis).map(({ words }) => speak(words));
    for (const words of said) {
      expect(words).toMatch(
        /^(Turn block \d+ (a quarter|a quarter back|half way round|(back )?by (one wedge|\d wedges))|Swap blocks \d+ and \d+|Trade the wedges? in places? \d.*)$/,
      );
    }
    expect(said.some((words) => words.startsWith('Swap'))).toBe(true);
    expect(said.some((words) => words.startsWith('Trade'))).toBe(true);
  });

  it('turn a block where a turn mends it', () => {
    const top = scrappyTop({ rows: 4, columns: 5, seed: 7 });
    for (const block of top.blocks) block.progress = 'squared';
    const facing = { ...analyse(top) };
    const clash = facing.clashes.find((one) => one.kind === 'facing')!;
    const only = clashFinding(top, clash);
    const words = propose(only, facing, { most: 9 }).map((one) => speak(one.words));
    expect(words.some((one) => one.startsWith('Turn block'))).toBe(true);
    expect(words.some((one) => one.startsWith('Trade'))).toBe(false);
  });

  it('never touch what is pinned or sewn', () => {
    const sewn = demo('keepers-winter');
    const found = analyse(sewn);
    const proposals = everyProposal(found);
    expect(proposals.length).toBeGreaterThan(2);
    for (const { moves, words } of proposals) {
      const outcome = apply(sewn, rearrange(moves, words));
      expect(outcome.ok ? '' : outcome.problems[0]!.message.say).toBe('');
    }
    const pinned = structuredClone(project);
    for (const cell of pinned.wall.cells) cell!.pinned = true;
    expect(everyProposal(analyse(pinned))).toEqual([]);
  });

  it('are two changes where no single one is enough', () => {
    const top = threeInARow();
    const found = analyse(top);
    const clash = found.clashes.find((one) => one.id === 'facing:b1:b2:right')!;
    const finding = clashFinding(top, clash);
    const [first] = propose(finding, found);
    expect(speak(first!.words)).toBe('Swap blocks 2 and 3. Turn block 3 a quarter');
    const after = analyse(moved(top, first!.moves));
    expect(after.clashes.filter((one) => one.kind === 'facing')).toHaveLength(1);
  });

  it('are none for the rims of sewn blocks: nothing at the wall mends those', () => {
    const sewn = structuredClone(project);
    for (const block of sewn.blocks) block.progress = 'squared';
    const found = analyse(sewn);
    const rims = found.findings.filter((one) => one.kind === 'rim');
    expect(rims.length).toBeGreaterThan(0);
    for (const finding of rims) expect(propose(finding, found)).toEqual([]);
  });

  it('can be taken together, with the effect of all', () => {
    const [first] = propose(analysis.findings[0]!, analysis);
    const next = analyse(moved(project, first!.moves));
    const [second] = next.findings.flatMap((finding) => propose(finding, next));
    const moves = [...first!.moves, ...second!.moves];
    const together = effectOf(analysis, moves);
    const { terms } = analyse(moved(project, moves));
    expect(together.before.total).toBeCloseTo(weighted(analysis.terms, DEFAULT_WEIGHTS), 9);
    expect(together.after.total).toBeCloseTo(weighted(terms, DEFAULT_WEIGHTS), 9);
    expect(together.after.total).toBeLessThan(first!.effect.after.total);
  });
});

/** Block 1 sewn in, and 1 and 2 with one fabric all round; 3 has another at its top only. All squared. */
function threeInARow(): Project {
  const top = scrappyTop({ rows: 1, columns: 3, seed: 1, sets: 2 });
  top.stripSets.forEach((set, at) => {
    set.strips = [`c${at}`, 'c2', `c${at}`].map((fabric) => ({ fabric, width: 4 }));
  });
  top.fabrics.forEach((fabric, at) => {
    fabric.colour = ['#ffffff', '#104080', '#e0b020', '#a03030'][at] ?? '#808080';
  });
  const [plain, other] = top.stripSets.map((set) => set.id);
  top.blocks.forEach((block, at) => {
    block.id = `b${at + 1}`;
    block.progress = at === 0 ? 'joined' : 'squared';
    block.places.forEach((place, index) => {
      place!.set = at === 2 && index === 0 ? other! : plain!;
    });
    top.wall.cells[at] = { block: block.id, turn: 0, pinned: false };
  });
  return top;
}
