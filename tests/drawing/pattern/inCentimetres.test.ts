// The pattern of a maker who cuts by centimetres: no inch, no yard, no package of another country in its text.
import { describe, expect, it } from 'vitest';
import { PAPERS } from '../../../src/drawing/pattern/page';
import { demo } from '../../demo';
import { makePdf, wordsOn, written } from './makePdf';
import { readPdf } from './readPdf';

const LONG = 300_000;
/** What only who cuts by the inch says; words stand without spaces (readPdf). */
const INCH_WORDS = /\d["″]|\d\/\d|inch|yard|\dyd|(?:Crib|Twin|Full|Queen|King|no)package/;

describe('the pattern in centimetres on A4', () => {
  it.each(['harbour-reading-corner', 'keepers-winter'])(
    'of %s says nothing by the inch',
    (name) => {
      // The prices of the examples are for the yard; this maker's are for the metre.
      const project = demo(name);
      project.preferences.unit = 'cm';
      project.buying.soldBy = 'metre';
      const { pages } = written(project, 'a4');
      for (const page of pages) expect(INCH_WORDS.exec(wordsOn(page))?.[0]).toBeUndefined();
    },
    LONG,
  );

  it(
    'has a bar of 2 cm on every sheet of templates, as long as it says',
    async () => {
      const quilt = demo('harbour-reading-corner');
      const project = { ...quilt, preferences: { ...quilt.preferences, unit: 'cm' as const } };
      const { pages } = await readPdf(makePdf(project, 'a4', ['templates']).bytes);
      const [check, ...sheets] = pages;
      expect(check!.text).toContain('2cm');
      expect(check!.text).toContain('5cm');
      expect(sheets.length).toBeGreaterThan(0);
      const long = (2 / 2.54) * 72;
      for (const { text, paths } of sheets) {
        expect(text).toContain('2cm');
        const bars = paths.filter(({ points: [from, to, more] }) => {
          if (!from || !to || more || Math.abs(from[1] - to[1]) > 0.01) return false;
          return Math.abs(to[0] - from[0] - long) < 0.05 && from[1] > (PAPERS.a4.height - 0.7) * 72;
        });
        expect(bars).toHaveLength(1);
      }
    },
    LONG,
  );
});
