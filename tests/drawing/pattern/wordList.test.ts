// The words that the pattern explains are those of the glossary that it says, neither fewer nor more, and none because of a name.
import { describe, expect, it } from 'vitest';
import { STYLES } from '../../../src/drawing/pattern/look';
import type { PatternPart } from '../../../src/drawing/pattern/options';
import type { Mark } from '../../../src/drawing/pattern/page';
import type { Project } from '../../../src/model/project';
import { GLOSSARY } from '../../../src/model/words/glossary';
import { demo } from '../../demo';
import { runs } from '../../runs';
import { randomProject } from '../samples';
import { written } from './makePdf';

/** What the symbols explain. */
const BY_SYMBOLS = ['tip up', 'tip down', 'place'];

/** The list of words as terms, and everything else on the pages, heading by heading in order of writing. */
function explained(project: Project, parts?: readonly PatternPart[]): { terms: string[]; rest: string } {
  let inList = false;
  const terms: string[] = [];
  const rest: string[] = [];
  for (const mark of written(project, 'a4', parts).pages.flatMap((page): readonly Mark[] => page.marks)) {
    if (mark.kind !== 'text') continue;
    if (mark.size === STYLES.heading.size || mark.size === STYLES.part.size) inList = mark.text === 'Words';
    if (!inList) rest.push(mark.text);
    else if (mark.face === STYLES.smallStrong.face && mark.size === STYLES.smallStrong.size) terms.push(mark.text);
  }
  return { terms, rest: rest.join(' ') };
} // biome-ignore format: a reader

const said = (text: string) =>
  GLOSSARY.map(({ term }) => term).filter(
    (term) =>
      !BY_SYMBOLS.includes(term) &&
      new RegExp(`(^|[^\\p{L}-])${term}(s|es|ed|ing)?($|\\P{L})`, 'iu').test(text),
  );

describe('the words of the pattern', () => {
  it.each(['harbour-reading-corner', 'river-ferry', 'plum-orchard'].slice(0, runs(2, 3)))(
    '%s explains what it says',
    (name) => {
      const { terms, rest } = explained({ ...demo(name), name: 'Quilt', notes: '' });
      expect(terms.length).toBeGreaterThan(8);
      expect(terms.toSorted()).toEqual(said(rest).toSorted());
    },
  );

  it('are those of the chosen parts only', () => {
    const project = demo('river-ferry');
    const few = explained(project, ['cover', 'templates']).terms;
    const all = explained(project).terms;
    expect(few.length).toBeLessThan(all.length);
    expect(all).toEqual(expect.arrayContaining(few));
  });

  it('are not those of the names that people give', () => {
    const project = randomProject(3, 8);
    const fabrics = project.fabrics.map((fabric, at) => ({
      ...fabric,
      name: `Cornerstone look-alike ${at}`,
    }));
    const setting = { ...project.setting, sashing: { ...project.setting.sashing, where: 'none' as const } };
    const { terms, rest } = explained({ ...project, name: 'Clash', fabrics, setting });
    expect(rest).toContain('Cornerstone look-alike');
    expect(terms).not.toContain('cornerstone');
    expect(terms).not.toContain('look-alike');
    expect(terms).not.toContain('clash');
  });
});
