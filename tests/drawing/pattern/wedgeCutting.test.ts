// The pages on cutting wedges: over and in the drawing of every set stand the steps and the cuts of that set, and no others.
import { describe, expect, it } from 'vitest';
import { cutLines, layingWords } from '../../../src/cutting/wedges/laying';
import { createProject } from '../../../src/model/create';
import type { Project, StripSet, Tip } from '../../../src/model/project';
import { sayIn, written } from './makePdf';
import { partMarks } from './partMarks';
import { bare } from './readPdf';

function projectWith(heights: readonly number[], firstTip: Tip, unit: 'in' | 'cm'): Project {
  const project = createProject('p', 'Sample');
  const stripSets = heights.map((width, index): StripSet => ({
    id: `s${index}`, label: 'ABCDEF'[index]!, strips: [{ fabric: project.fabrics[0]!.id, width }], length: 42,
    pressing: 'last', firstTip, progress: 'planned', cut: null, locked: false,
  })); // biome-ignore format: a fixture
  return { ...project, stripSets, preferences: { ...project.preferences, unit } };
}

/** Words of the part, and the length of every bold line in it, page inches. */
function read(project: Project): { words: string; lines: number[] } {
  const marks = partMarks(written(project, 'a4', ['sets']).pages, 'Cutting the wedges');
  return {
    words: bare(marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join(' ')),
    lines: marks.flatMap((mark) => {
      if (mark.kind !== 'line' || mark.stroke.width !== 0.014) return [];
      const [from, to] = mark.points;
      return [Math.hypot(to!.x - from!.x, to!.y - from!.y)];
    }),
  };
}

const count = (text: string, part: string) => text.split(bare(part)).length - 1;

describe('the pages on cutting wedges', () => {
  it('leave out a set known from its sewn wedges alone, and its card tells no length', () => {
    const project = projectWith([7.5, 8], 'up', 'in');
    const sewn = { ...project.stripSets[0]!, length: 0, progress: 'cut' as const, cut: { up: 4, down: 4 } };
    const quilt = { ...project, stripSets: [sewn, project.stripSets[1]!] };
    const all = written(quilt, 'a4', ['sets']).pages.flatMap((page) => page.marks);
    const words = bare(all.map((mark) => (mark.kind === 'text' ? mark.text : '')).join(''));
    expect(words).not.toContain(bare('1 strip, 0"'));
    expect(words).not.toContain(bare('No wedge fits'));
    expect(words).toContain(bare('1 strip, 42" long'));
    expect(words).toContain(bare('from 42" of a set 8" high'));
  });

  it.each([
    { heights: [7.5, 8, 8.5, 12, 16], firstTip: 'up' as const, unit: 'in' as const },
    { heights: [7.7, 8.25, 15], firstTip: 'down' as const, unit: 'cm' as const },
    { heights: [8], firstTip: 'down' as const, unit: 'in' as const },
    { heights: [7.5], firstTip: 'up' as const, unit: 'cm' as const },
  ])('draw and say the cuts of every set: $heights high, first tip $firstTip, $unit', ({ heights, firstTip, unit }) => {
    const project = projectWith(heights, firstTip, unit);
    const say = sayIn(project);
    const { words, lines } = read(project);
    const cuts = project.stripSets.map((set) => cutLines(set, project.wedge));
    expect(lines).toHaveLength(cuts.flat().length);
    // In the order of the sets, each drawing at its own scale: the longest line of each tells it.
    let at = 0;
    for (const set of cuts) {
      const drawn = lines.slice(at, at + set.length);
      const real = set.map(({ from, to }) => Math.hypot(to.x - from.x, to.y - from.y));
      const scale = Math.max(...drawn) / Math.max(...real);
      expect(drawn).toEqual(real.map((length) => expect.closeTo(length * scale, 6)));
      at += set.length;
    }
    const sentences = new Set(project.stripSets.flatMap((set) => layingWords(set, project.wedge).map((one) => say(one))));
    for (const sentence of sentences) expect(count(words, sentence), sentence).toBeGreaterThan(0);
    expect(count(words, 'lay it close against the cut before')).toBe(
      project.stripSets.filter((set) => layingWords(set, project.wedge).some((one) => say(one).includes('close against'))).length,
    );
  }); // biome-ignore format: a long name
});
