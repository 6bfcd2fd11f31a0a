// What the analysis says: little of a random scrappy top, the right thing of a spoilt one, always with a number behind it.
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Analysis, analyse } from '../../src/balance/analyse';
import { speak } from '../../src/model/phrase';
import type { Project } from '../../src/model/project';
import { readProject } from '../../src/model/reading/readText';
import { runs } from '../runs';
import { clashList } from './clashList';
import { scrappyTop, withDarkBlocks } from './tops';

const said = (analysis: Analysis) => analysis.findings.map((finding) => speak(finding.words));
const ofKind = (analysis: Analysis, kind: string) => analysis.findings.filter((one) => one.kind === kind);

/** One fabric on both sides of every seam between blocks, by giving all blocks the same wedge on all places. */
function allAlike(project: Project): Project {
  const first = project.blocks[0]!.places[0]!;
  return {
    ...project,
    blocks: project.blocks.map((block) => ({ ...block, places: block.places.map(() => first) })),
  };
}

describe('the findings', () => {
  it('of random scrappy tops are few, and hardly ever speak of pools, leans or gathered fabrics', () => {
    for (const [rows, columns] of [
      [2, 3],
      [4, 5],
      [8, 10],
    ] as const) {
      const analyses = Array.from({ length: rows === 8 ? runs(4, 8) : runs(8, 12) }, (_, seed) =>
        analyse(scrappyTop({ rows, columns, seed: 100 + seed, fabrics: 30 })),
      );
      const mean = analyses.reduce((sum, one) => sum + one.findings.length, 0) / analyses.length;
      expect(mean).toBeLessThanOrEqual(3);
      const spread = analyses.flatMap((one) =>
        one.findings.filter((finding) => !['rim', 'facing', 'radial'].includes(finding.kind)),
      );
      expect(spread.length).toBeLessThanOrEqual(3);
    }
  }, 30_000);

  it('of four dark blocks in a corner say so, where they are, and outline them', () => {
    const project = withDarkBlocks(
      scrappyTop({ rows: 6, columns: 6, seed: 3, fabrics: 30 }),
      [24, 25, 30, 31],
    );
    const analysis = analyse(project);
    expect(said(analysis)).toContain('Four dark blocks together, lower left.');
    const [pool] = ofKind(analysis, 'value-pool');
    expect(pool!.measure.unit).toBe('L*');
    expect(pool!.measure.value).toBeLessThan(-10);
    expect([...pool!.blocks].sort()).toEqual(['b24', 'b25', 'b30', 'b31']);
    const outline = pool!.marks.flatMap((mark) => (mark.kind === 'pool' ? mark.outline : []));
    // Two blocks of 14" each way, in the lower left of an 84" top.
    expect(outline).toHaveLength(4);
    const xs = outline.map((point) => point.x);
    const ys = outline.map((point) => point.y);
    expect([Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]).toEqual(
      [0, 28, 56, 84].map((inches) => expect.closeTo(inches, 6)),
    );
  });

  it('do not call an order a fault where the person wants it', () => {
    const project = withDarkBlocks(
      scrappyTop({ rows: 6, columns: 6, seed: 3, fabrics: 30 }),
      [24, 25, 30, 31],
    );
    const analysis = analyse(project, { intent: { value: 'light to dark', colour: 'scattered' } });
    expect(ofKind(analysis, 'value-pool')).toEqual([]);
    expect(analysis.pools.length).toBeGreaterThan(0);
  });

  it('of a top with all darks on one side call it heavy', () => {
    const base = scrappyTop({ rows: 3, columns: 2, seed: 3, fabrics: 30 });
    const analysis = analyse(withDarkBlocks(base, [0, 2, 4]));
    expect(ofKind(analysis, 'whole-top').map((one) => speak(one.words))[0]).toMatch(
      /^Lights lean towards the right: the halves differ by \d\.\d steps of value\.$/,
    );
    expect(analysis.wholeTop.light.offset.x).toBeGreaterThan(1);
    const [lean] = ofKind(analysis, 'whole-top');
    expect(speak(lean!.measured)).toMatch(
      /^Lights balance [\d /]+" to the right of the middle; the halves differ by [\d.]+ steps of value, (unlikely|perhaps) by accident /,
    );
    const { middle, light } = analysis.wholeTop;
    expect(lean!.marks).toEqual([
      {
        kind: 'centre',
        of: 'light',
        at: { x: middle!.x + light.offset.x, y: middle!.y + light.offset.y },
        middle,
      },
    ]);
    expect(analysis.wholeTop.light.toward.x).toBeGreaterThan(0.9);
  });

  it('of a top of one wedge alone fold the many clashes into one sentence a kind', () => {
    const analysis = analyse(allAlike(scrappyTop({ rows: 4, columns: 5, seed: 3 })));
    expect(ofKind(analysis, 'facing')).toHaveLength(1);
    expect(ofKind(analysis, 'rim')).toHaveLength(1);
    expect(said(analysis).some((one) => one.startsWith('31 pairs of blocks meet'))).toBe(true);
    expect(ofKind(analysis, 'facing')[0]!.marks).toHaveLength(31);
  });

  it('carry a number, a weight from 0 to 1, and come heaviest first', () => {
    for (const seed of [1, 2, 3]) {
      const { findings, clashes } = analyse(
        withDarkBlocks(scrappyTop({ rows: 5, columns: 5, seed, fabrics: 8 }), [0, 1, 5, 6]),
      );
      expect(findings.length).toBeGreaterThan(0);
      for (const finding of findings) {
        expect(Number.isFinite(finding.measure.value)).toBe(true);
        expect(finding.weight).toBeGreaterThanOrEqual(0);
        expect(finding.weight).toBeLessThanOrEqual(1);
        expect(speak(finding.words)).not.toMatch(/[{}]/);
        expect(speak(finding.measured)).toMatch(/\d/);
        expect(speak(finding.measured)).not.toMatch(/[{}]/);
        const behind = clashes.filter((clash) => finding.clashes.includes(clash.id));
        expect(behind.flatMap((clash) => clash.marks)).toHaveLength(
          finding.clashes.length === 0 ? 0 : finding.marks.length,
        );
      }
      const weights = findings.map((one) => one.weight);
      expect(weights).toEqual(weights.toSorted((one, other) => other - one));
      expect(new Set(findings.map((one) => one.id)).size).toBe(findings.length);
    }
  });

  it('of look-alikes grow with the threshold the person sets', () => {
    const project = scrappyTop({ rows: 4, columns: 5, seed: 2, fabrics: 40 });
    const alike = [2, 6, 10, 20].map(
      (lookalikes) => clashList(project, { lookalikes }).filter((clash) => clash.likeness < 1).length,
    );
    expect(alike).toEqual(alike.toSorted((one, other) => one - other));
    expect(alike[3]!).toBeGreaterThan(alike[0]!);
    const same = [2, 20].map(
      (lookalikes) => clashList(project, { lookalikes }).filter((clash) => clash.likeness === 1).length,
    );
    expect(same[0]).toBe(same[1]);
  });
});

describe('the demo projects', () => {
  const folder = new URL('../../demo-data/', import.meta.url);
  for (const file of readdirSync(folder).filter((name) => name.endsWith('.json'))) {
    it(`are analysed without a hitch: ${file}`, () => {
      const read = readProject(readFileSync(new URL(file, folder), 'utf8'));
      expect(read.ok).toBe(true);
      if (!read.ok) return;
      const analysis = analyse(read.value);
      expect(clashList(read.value)).toEqual(analysis.clashes);
      expect(analysis.findings.length).toBeLessThanOrEqual(8);
      for (const name of Object.values(analysis.terms)) expect(name).toBeGreaterThanOrEqual(0);
    });
  }
});
