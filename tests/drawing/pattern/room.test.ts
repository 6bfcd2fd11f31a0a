// Words of the pattern have the room they need: none is cut off, none runs over another or off the page, however long the names
// that people give and however narrow the column.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Mark } from '../../../src/drawing/pattern/page';
import type { Project } from '../../../src/model/project';
import { DEMOS } from '../../demo';
import { runs } from '../../runs';
import { randomProject } from '../samples';
import { type, written, writtenDemo } from './makePdf';

/** What a printer leaves white at the edge of a sheet, inches (from memory). */
const WHITE_EDGE = 0.17;

interface Words {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Where letters stand: from the top of capitals to the baseline. */
function wordsOn(marks: readonly Mark[]): Words[] {
  return marks.flatMap((mark) => {
    if (mark.kind !== 'text' || mark.text.trim() === '') return [];
    const { text, at, size } = mark;
    return [{ text, left: at.x, right: at.x + type.width(text, mark.face, size), top: at.y - size * 0.68, bottom: at.y }];
  });
} // biome-ignore format: one object

/** What is wrong with the words of every page, in words of its own. */
function faults({ paper: { width, height }, pages }: ReturnType<typeof written>): string[] {
  return pages.flatMap(({ parts, marks }, index) => {
    const words = wordsOn(marks);
    const on = `page ${index + 1}, ${parts.join(', ')}`;
    const cut = words.filter(({ text }) => text.includes('…')).map(({ text }) => `${on}: cut off: ${text}`);
    const off = words.filter(({ left, right, bottom }) => left < WHITE_EDGE || right > width - WHITE_EDGE || bottom > height - WHITE_EDGE);
    const over = words.flatMap((one, at) =>
      words.slice(at + 1).filter((other) => meets(one, other)).map((other) => `${on}: ${one.text} over ${other.text}`),
    );
    return [...cut, ...off.map(({ text }) => `${on}: off the page: ${text}`), ...over];
  });
} // biome-ignore format: three lists

/** A fraction's figures reach a little over its stroke. */
const HAIR = 0.012;

function meets(one: Words, other: Words): boolean {
  if (one.text === '\u2044' || other.text === '\u2044') return false;
  return (
    one.left < other.right - HAIR &&
    other.left < one.right - HAIR &&
    one.top < other.bottom - HAIR &&
    other.top < one.bottom - HAIR
  );
}

const NAMES = fc.array(
  fc.oneof(
    fc.constantFrom('Ink', 'Night sky', 'Wintergreen stripes on oyster white', 'Windowpane check, smoke'),
    fc.constantFrom('W'.repeat(120), 'Wide and wonderful '.repeat(6).trim()),
  ),
  { minLength: 6, maxLength: 6 },
);

const QUILTS = fc.record({
  seed: fc.integer({ min: 1, max: 9999 }),
  perBlock: fc.constantFrom(6 as const, 8 as const, 10 as const, 12 as const),
  unit: fc.constantFrom('in' as const, 'cm' as const),
  rows: fc.integer({ min: 1, max: 4 }),
  columns: fc.integer({ min: 1, max: 4 }),
  labels: fc.constantFrom(['0', '1', '2'], ['A', 'B', 'C'], ['WWWW', 'MMMM', 'A1B2']),
  names: NAMES,
  title: fc.constantFrom('Sample', 'W'.repeat(120), 'A long way home, by the river and over the hills, with stops for tea and a second look at the map of the county'),
  paper: fc.constantFrom('a4' as const, 'letter' as const),
}); // biome-ignore format: a fixture

function quilt(one: typeof QUILTS extends fc.Arbitrary<infer One> ? One : never): Project {
  const project = randomProject(one.seed, one.perBlock, one.rows, one.columns);
  return {
    ...project,
    name: one.title,
    preferences: { ...project.preferences, unit: one.unit },
    fabrics: project.fabrics.map((fabric, index) => ({ ...fabric, name: one.names[index % one.names.length]! })),
    stripSets: project.stripSets.map((set, index) => ({ ...set, label: one.labels[index]! })),
    setting: { ...project.setting, borders: [{ fabric: 'b', width: 3 }], binding: { fabric: 'c', cutWidth: 2.5 } },
  };
} // biome-ignore format: a fixture

describe('words of a pattern', () => {
  it.each(DEMOS.flatMap((name) => (['letter', 'a4'] as const).map((paper) => [name, paper] as const)))(
    'of %s on %s have room',
    (name, paper) => {
      // In the unit that goes with the paper; random quilts come in both on each.
      expect(faults(writtenDemo(name, paper, paper === 'a4' ? 'cm' : 'in'))).toEqual([]);
    },
  );

  it('of random quilts with names of any length have room', () => {
    fc.assert(
      fc.property(QUILTS, (one) => {
        expect(faults(written(quilt(one), one.paper))).toEqual([]);
      }),
      { numRuns: runs(3, 60) },
    );
  }, 600_000);
});
