// Numbers as the person's machine writes them, wherever they are read: no decimal point where a comma is the habit, no decimal comma
// where a point is. Held over what the demo quilts say on screen and in the pattern, and over the sources: nothing that a person reads
// is written past the style of numbers.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { analyse } from '../src/balance/analyse';
import { kits } from '../src/cutting/kits/kits';
import { makeSets, setMakingOf } from '../src/cutting/sets/randomSets';
import { bulkReport } from '../src/cutting/top/bulk';
import { clothText } from '../src/cutting/yardage/clothLength';
import { money } from '../src/cutting/yardage/money';
import { yardage } from '../src/cutting/yardage/yardage';
import { PATTERN_PARTS } from '../src/drawing/pattern/options';
import { type Phrase, type PhraseValue, phrase, speak } from '../src/model/phrase';
import type { Project } from '../src/model/project';
import type { LengthUnit } from '../src/model/units';
import { figureOf } from '../src/model/words/figure';
import { inStyle, numberStyleOf } from '../src/model/words/numberStyle';
import { scorePair } from '../src/ui/steps/wall/scoreWords';
import { DEMOS, demo } from './demo';
import { written } from './drawing/pattern/makePdf';
import { runs } from './runs';
import { sentences } from './sentences';
import { filesUnder, textOf } from './srcFiles';

const LONG = 600_000;
const UNITS: readonly LengthUnit[] = ['in', 'cm'];
/** A mark with figures on both sides that is no mark between thousands. */
const STRANGE: Readonly<Record<string, RegExp>> = {
  en: /\d,(?!\d{3}(?!\d))\d/,
  de: /\d\.(?!\d{3}(?!\d))\d/,
  fr: /\d\.\d/,
};

/** All sentences anywhere in what a room gives. */
function phrasesIn(value: unknown, found: Phrase[] = []): Phrase[] {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return found;
  if ('say' in value && typeof value.say === 'string') found.push(value as Phrase);
  else for (const part of Object.values(value)) phrasesIn(part, found);
  return found;
}

function strange(texts: readonly string[], language: string): string[] {
  return texts.filter((text) => STRANGE[language]!.test(text));
}

/** What the rooms say of a quilt, priced, with everything that can be said of it. */
function saidOf(project: Project): Phrase[] {
  const { findings, evenness, fabrics, wholeTop } = analyse(project);
  const made = makeSets(setMakingOf(project, { sets: 6 }, 1));
  return phrasesIn([
    ...findings,
    ...evenness,
    ...fabrics,
    wholeTop,
    made.notes,
    made.whyLeft,
    yardage(project, 'whole'),
    kits(project),
    bulkReport(project),
  ]);
}

const priced = (name: string, unit: LengthUnit): Project => {
  const quilt = demo(name);
  return {
    ...quilt,
    preferences: { ...quilt.preferences, unit },
    buying: { ...quilt.buying, price: 1249.5, currency: '£', shrinkage: 2.5 },
  };
};

/** What is said of each quilt in each unit: worked out once, spoken in every language. */
const said = new Map<string, Phrase[]>();
function saidOnce(name: string, unit: LengthUnit): Phrase[] {
  const key = `${name} ${unit}`;
  const known = said.get(key) ?? saidOf(priced(name, unit));
  said.set(key, known);
  return known;
}

/** A quilt of many blocks speaks in centimetres alone, where decimals are. */
function unitsOf(name: string): readonly LengthUnit[] {
  return demo(name).blocks.length > 40 ? ['cm'] : UNITS;
}

const LANGUAGES = Object.keys(STRANGE);
const FEWEST = 'harbour-reading-corner';

describe.each(LANGUAGES)('in the numbers of %s', (language) => {
  const numbers = numberStyleOf(language);
  // A pattern takes long: each quilt's is written in one of the languages, and in inches too that of the fewest blocks.
  const patterned = DEMOS.filter((_, at) => LANGUAGES[(at + 1) % LANGUAGES.length] === language);

  it.each(DEMOS)(
    'the rooms speak of %s, in inches and centimetres',
    (name) => {
      for (const unit of unitsOf(name)) {
        const texts = saidOnce(name, unit).map((one) => speak(one, unit, undefined, undefined, numbers));
        expect(texts.length).toBeGreaterThan(20);
        expect(strange(texts, language)).toEqual([]);
      }
    },
    LONG,
  );

  it.each(patterned)(
    'the pattern of %s is written',
    (name) => {
      for (const unit of name === FEWEST ? UNITS : (['cm'] as const)) {
        const say = (sentence: string | Phrase, values?: Record<string, PhraseValue>) =>
          speak(
            typeof sentence === 'string' ? phrase(sentence, values) : sentence,
            unit,
            undefined,
            undefined,
            numbers,
          );
        // Many blocks say the same on their cards.
        const parts = PATTERN_PARTS.filter((part) => part !== 'blocks' || demo(name).blocks.length <= 40);
        const { pages } = written(priced(name, unit), 'a4', parts, say);
        const texts = pages.flatMap((page) =>
          page.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
        );
        expect(texts.length).toBeGreaterThan(200);
        expect(strange(texts, language)).toEqual([]);
      }
    },
    LONG,
  );

  it('money, lengths of fabric, scores and other figures are written, whatever they are', () => {
    const project = demo('kiln-shed');
    const amount = fc.double({ min: 0, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(amount, amount, fc.integer({ min: 0, max: 3 }), (one, other, places) => {
        const score = scorePair(one / 1e5, other / 1e5, analyseTerms);
        const values: PhraseValue[] = [
          money(one, project),
          clothText(one, 'yard'),
          clothText(one, 'metre'),
          figureOf(one, places),
          score.before,
          score.after,
          { inches: one },
          { seam: one / 1e6 },
          { atLeast: one },
          { atMost: one },
          { squareInches: one },
        ];
        const texts = UNITS.flatMap((unit) =>
          values.map((value) => speak(phrase('{value}', { value }), unit, undefined, undefined, numbers)),
        );
        expect(strange(texts, language)).toEqual([]);
      }),
      { seed: 20261128, numRuns: runs(105, 300) },
    );
  });
});

const analyseTerms = analyse(demo('kiln-shed')).terms;

it('finds a decimal mark of another habit, and no mark between thousands', () => {
  expect(strange(['14.5 cm', '1.234 yd', '1.234,5'], 'de')).toEqual(['14.5 cm']);
  expect(strange(['14,5 cm', '1,234 yd', '1,234.5'], 'en')).toEqual(['14,5 cm']);
  expect(inStyle('1234.5', numberStyleOf('de'))).toBe('1.234,5');
});

/** Where numbers are written for no person: keys of tables, paths of drawings, and the two files that write them for people. */
const WRITERS = [
  'src/cutting/yardage/lineWords.ts',
  'src/cutting/yardage/money.ts',
  'src/drawing/measures.ts',
  'src/drawing/number.ts',
  'src/drawing/pattern/clothMarks.ts',
  'src/drawing/pattern/pages/wedgeCutting.ts',
  'src/drawing/pattern/pdf/pdfCloth.ts',
  'src/model/decimals.ts',
  'src/model/words/figure.ts',
  'src/ui/stage/fabrics/PieceOfCloth.tsx',
];

it('decimals are written by the one file that gives figures, else for no person', () => {
  const writers = filesUnder('src').filter(
    (path) => /\.tsx?$/.test(path) && /\.(toFixed|toLocaleString)\(/.test(textOf(path)),
  );
  expect(writers.toSorted()).toEqual(WRITERS);
});

it('no sentence has a decimal number in its words', () => {
  const said = filesUnder('src')
    .filter((path) => /\.tsx?$/.test(path))
    .flatMap((path) => sentences(path, textOf(path)));
  const found = said.filter(
    ({ text }) => /\d[.,]\d/.test(text) && /\p{Ll}{3}/u.test(text) && !/^(rgb|translate|\) )/.test(text),
  );
  expect(found).toEqual([]);
});
