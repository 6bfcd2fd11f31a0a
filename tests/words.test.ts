// Words that puzzled makers do not come back: every sentence of the sources, the README and the page, held against a table of retired words
// with what is said instead. Sentences are read from the parsed sources, so that code names and comments may say what they like.
import { expect, it } from 'vitest';
import { type Said, sentences } from './sentences';
import { filesUnder, textOf } from './srcFiles';

/** A retired word or turn of phrase, what is said instead, and a sentence that used to say it. */
const RETIRED: readonly (readonly [retired: RegExp, instead: string, example: string])[] = [
  [/\bcloths?\b/i, 'fabric', 'The cloth on hand is enough.'],
  [/\bkept\b|\bkeeping …/i, 'saved', 'The browser could not read its kept projects'],
  [/\bkeep(s|ing)? (it as|this|no|projects|(at )?most|everything|nothing)\b/i, 'save', 'or keep this one as a copy'],
  [/\bcopy (this one|the quilt)\b/i, 'duplicate', 'Copy this one'],
  [/\b(of|in) the draw\b/i, 'shuffle number, for sets mix number', 'Number of the draw'],
  [/by the next number/i, 'try another mix', 'Others, by the next number'],
  [/\bstrew/i, 'rearrange the print', 'Strew it anew'],
  [/\bwr(ite|itten|ote|iting) (\{\} |\w+ )?down\b/i, 'add', 'write down 1 strip'],
  [/\breckon/i, 'count, work out', 'so none is reckoned'],
  [/\bso many\b/i, 'number of …', 'For so many blocks'],
  [/\bcompos(e|ed|es|ing)\b/i, 'fill', '3 blocks are composed.'],
  [/\b(afresh|anew)\b/i, 'new, again, start over', 'For all, afresh'],
  [/\bhow far (it|a|the|each|every|\{\})( \w+)*,? (is|are)\b(?! from)/i, 'progress', 'set how far {count} blocks are'],
  [/\bas the step is\b|\bmark several\b/i, 'progress', 'filled as far as the step is'],
  [/\bclean length\b/i, 'usable length', 'Clean length'],
  [/tip-(up|down) rim/i, 'outer edge of tip-up wedges', 'last · tip-down rim'],
  [/\bcomfortable\b/i, 'oversized, trim after sewing', 'comfortable, trimmed later'],
  [/tells the truth/i, 'check against your test block', 'The first sewn block tells the truth'],
  [/\b(back|on) by one wedge\b|^(Back|On) by\b/, 'one wedge back, one wedge forward', 'Back by one wedge'],
  [/\bto trade between\b/i, 'compare with another block', 'Lay another block beside it, to trade between the two'],
  [/\bfurther in\b/i, 'inside blocks', 'Further in a fabric meets itself'],
  [/\balike below\b/i, 'look-alike limit', 'alike below 10'],
  [/\bby chance\b|\bchance would\b/i, 'in a random layout, by accident', 'a top by chance has 100'],
  [/\bit may (move|be moved)\b|\bit minds\b|\bhow long it looks\b/i, 'shuffle options, search time', 'What it may move'],
  [/\bon (the )?other places\b/i, 'turn corners by one wedge', 'Corners on the other places'],
  [/weight of the whole/i, 'overall balance', 'Weight of the whole top'],
  [/\bgather(ed|s)\b/i, 'cluster', 'it gathers'],
  [/\bL\*/, 'steps of value, lighter, darker', '24 L* lighter'],
  [/centre of (lightness|warmth)/i, 'lights lean, lights balance', 'Centre of lightness to the left'],
  [/^(Every second|From the first)\b/, 'alternate, block first, plain square first', 'Every second'],
  [/gaps of different/i, 'vary sashing widths', 'Gaps of different widths'],
  [/\bmake it (so|about)\b|(^|\. )do it\b(?! \w)/i, 'use this, apply', 'Make it so'],
  [/\bonly a look\b/i, 'preview: not applied', 'Only a look: nothing is changed yet'],
  [/\b(this|its|the) order (found|will|waits|the shuffle)\b|\b(other|several|good) orders\b|^Keep this/i, 'layout', 'Keep this order'],
  [/\bleave it as it was\b/i, 'cancel', 'Leave it as it was'],
  [/\bput (another|\{\}) (cloth |fabric )?in\b|\bswap it every/i, 'replace', 'Put another in its place'],
  [/\blightness of the wall\b|\bflannel\b/i, 'wall background', 'Lightness of the wall'],
  [/\bhands and keys\b/i, 'gestures and shortcuts', 'Hands and keys'],
  [/^(Closer|Farther)$|\bcomes? closer\b/, 'zoom in, zoom out', 'Closer'],
  [/\bturned hues\b|\bunused cloth\b|\bsame cloth\b|^Turned over$/i, 'shift colours, other fabrics, reuse these, inverted', 'Turned hues'],
  [/\bmake the quilt in\b/i, 'use this colourway', 'Make the quilt in it'],
  [/^Meetings$/i, 'clashes', 'Meetings'],
  [/\bbeside the (cloth|fabric),? a kit\b|^Beside the\b/i, 'other costs per kit', 'Beside the cloth, a kit'],
  [/\bfrom memory\b/i, 'a typical figure', 'a figure from memory'],
  [/\bsigns in the\b/i, 'symbols', 'Signs in the drawings'],
  [/\b(level|upright) (sashing|strips?|pieces?)\b|sashing, (level|upright)/i, 'horizontal, vertical', 'Upright sashing C'],
  [/\bway round is\b/i, 'distance around', 'The way round is 200"'],
  [/^(A poster|To send)$/i, 'large, email size', 'A poster'],
  [/\bin the hundred\b/i, '%', '3 in the hundred of the length'],
  [/\bslant(ed|s)?\b|\baslant\b/i, 'diagonal', 'Sew each slanted row'],
  [/(?<!presser |free-motion )\bfoot\b/i, 'bottom (of the machine: presser foot)', 'from strip 1 at the foot'],
  [/\btake the pins? out\b/i, 'unpin', 'Take the pin out to move it.'],
  [/\bassembly\b|\bouter seam\b/i, 'between wedges, around the block', 'Assembly'],
  [/^Leave it$/, 'cancel', 'Leave it'],
  [/\b(page|block) before$/i, 'previous page, previous block', 'Page before'],
  [/\bmakes no odds\b/i, 'makes no difference', 'Makes no odds to the whole top.'],
  [/\bas (it|they) stands?\b/i, 'as set', 'with shrinkage as they stand under Finishing'],
  [/\bdone again\b/i, 'redone', 'Done again: shuffle'],
  [/(?<!-)\b[Pp]rojects?\b(?!-)/, 'quilt, quilt file', 'The browser has no room left for this project.'],
]; // biome-ignore format: a table

/** The paragraphs, items and rows of a document, without code. */
function paragraphs(path: string): Said[] {
  const text = textOf(path).replace(/```[\s\S]*?```|`[^`\n]*`|\]\([^)]*\)/g, '');
  return text.split(/\n\n|\n(?=[|#-])/).map((part) => ({ at: path, text: part.replaceAll('\n', ' ') }));
}

/** A sentence without the names of its values. */
const unnamed = (text: string) => text.replace(/\{\w+\}/g, '{}');

const retiredIn = (said: readonly Said[]): string[] =>
  said.flatMap(({ at, text }) =>
    RETIRED.flatMap(([retired, instead]) => {
      const found = retired.exec(unnamed(text));
      return found ? [`${at} “${found[0]}” in “${excerpt(unnamed(text), found.index)}”: say ${instead}`] : [];
    }),
  );

const excerpt = (text: string, from: number) => text.slice(Math.max(0, from - 40), from + 60);

it('says none of the retired words in the sources', () => {
  const sources = [...filesUnder('src'), ...filesUnder('scripts')].filter((path) => /\.tsx?$/.test(path));
  const said = sources.flatMap((path) => sentences(path, textOf(path)));
  expect(said.length).toBeGreaterThan(3000);
  expect(retiredIn(said)).toEqual([]);
});

it.each(['README.md', 'docs/report.md', 'index.html', 'public/manifest.webmanifest'])(
  'says none of the retired words in %s',
  (path) => {
    expect(retiredIn(paragraphs(path))).toEqual([]);
  },
);

it.each(RETIRED)('finds %s in a sentence that used to say it', (retired, instead, example) => {
  expect(unnamed(example)).toMatch(retired);
  expect(instead).not.toMatch(retired);
});

it('reads strings, templates and the text of elements, and neither imports, keys, types, markup nor a programmer’s errors', () => {
  const source = [
    "import { cloth } from './cloth on hand';",
    "type Kind = 'cloth on hand';",
    `const told = { 'cloth on hand': say('Cut the cloth.'), also: \`cut \${count} of cloth\` };`,
    'const seen = <p title="of this cloth">the cloth</p>;',
    'const drawn = \'<g data-layer="cloth" >\';',
    "throw new Error('clothOf: no cloth there');",
  ].join('\n');
  expect(sentences('made-up.tsx', source).map(({ text }) => text)).toEqual([
    'Cut the cloth.',
    'of cloth',
    'of this cloth',
    'the cloth',
  ]);
});
