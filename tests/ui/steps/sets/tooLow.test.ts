// A set that is too low by less than the ruler shows: everywhere that is told it is short by something, and by enough.
import { describe, expect, it } from 'vitest';
import { mendHeight } from '../../../../src/cutting/sets/mendHeight';
import { apply, type Command } from '../../../../src/editing/apply';
import { markSets } from '../../../../src/editing/commands/setProgress';
import { carryStrip, wayRound } from '../../../../src/editing/commands/sets/carryStrip';
import { createBlock, createProject, createSet } from '../../../../src/model/create';
import { speak } from '../../../../src/model/phrase';
import type { Project } from '../../../../src/model/project';
import { parseLength } from '../../../../src/model/units';
import { missing } from '../../../../src/ui/shell/missing';
import { heightWords } from '../../../../src/ui/steps/sets/heightWords';
import { written } from '../../../drawing/pattern/makePdf';
import { bare } from '../../../drawing/pattern/readPdf';

/** One set of one strip so wide, for wedges 7 1/2" high. */
function oneSet(width: number): Project {
  const project = createProject('p', 'Low');
  for (const id of ['a', 'b', 'c']) project.fabrics.push({ ...project.fabrics[0]!, id, name: id, background: false });
  project.stripSets.push({ ...createSet(project), strips: [{ fabric: 'a', width }] });
  return project;
} // biome-ignore format: a fixture

function refusal(project: Project, command: Command): string {
  const outcome = apply(project, command);
  if (outcome.ok) throw new Error('it is not refused');
  return speak(outcome.problems[0]!.message);
}

describe('a set 0.02" too low', () => {
  const low = oneSet(7.48);
  const [set] = low.stripSets;

  it('is told to be a sixteenth short, wherever that stands', () => {
    expect(speak(heightWords(7.48, low.wedge))).toBe('7 7/16" high, short by 1/16"');
    expect(speak(mendHeight(set!, low.wedge, [])!.words)).toContain('Set A is 1/16" short.');
    expect(refusal(low, markSets(['s1'], 'cut'))).toContain('Set A is 1/16" short;');
    expect(speak(missing(low, 'wedges', null).words)).toContain('it is 1/16" too low.');
    const marks = written(low, 'a4', ['sets']).pages.flatMap((page) => page.marks);
    const text = bare(marks.map((mark) => (mark.kind === 'text' ? mark.text : '')).join(''));
    expect(text).toContain(bare('This set is lower than the wedge: 1/16" is missing.'));
  });

  it('is told so where a strip is to be taken out of it and its wedges are used', () => {
    const project = oneSet(7.5);
    const [first] = project.stripSets;
    first!.strips = [{ fabric: 'a', width: 7.48 }, { fabric: 'b', width: 1 }]; // biome-ignore format: one line
    const block = createBlock(project);
    project.blocks.push({ ...block, places: block.places.map((_, at) => (at === 0 ? { set: 's1', tip: 'up' } : null)) }); // biome-ignore format: one line
    const taken = carryStrip(project, { kind: 'set', set: 's1', at: 1 }, { kind: 'left' });
    expect(refusal(project, taken)).toContain('Set A would be 7 7/16" high, 1/16" short,');
  });
});

describe('a strip 0.02" shorter than the set it is laid on', () => {
  it('is told to be shorter than that set, and so is the set once it is cut to it', () => {
    const project = oneSet(7.5);
    const from = { kind: 'left', strip: { fabric: 'b', width: 1 }, length: 39.98 } as const;
    const to = { kind: 'set', set: 's1', at: 1 } as const;
    const said = refusal(project, carryStrip(project, from, to));
    expect(said).toBe('This strip is 39 15/16" long, and set A is 40".');
    expect(speak(wayRound(project, from, to)!.words)).toContain('Make set A 39 15/16" long');
  });
});

describe('the height of a set that is too low', () => {
  it('and what it is short by come to the wedge, as they are printed', () => {
    for (const unit of ['in', 'cm'] as const) {
      const cutHeight = unit === 'in' ? 7.5 : 20 / 2.54;
      for (let short = 0.001; short < 1.5; short += 0.0137) {
        const said = speak(heightWords(cutHeight - short, { cutHeight }), unit);
        const [high, by] = said.split(' high, short by ').map((part) => parseLength(part, unit)!);
        expect(high! + by!, said).toBeCloseTo(cutHeight, 9);
        expect(by!, said).toBeGreaterThanOrEqual(short - 1e-9);
      }
    }
  });
});
