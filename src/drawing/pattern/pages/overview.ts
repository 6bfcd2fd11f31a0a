// What the maker reads first: sizes, the order of work, the signs used in the drawings, the cautions, and the words.
import { sizeWithSeams } from '../../../geometry/allowance';
import { cutWedge, finishedBlock, unfinishedBlock } from '../../../geometry/wedge';
import { roundedSumWords } from '../../measures';
import type { Composer } from '../composer';
import { inRow, textFigure } from '../lettering';
import { ink, STYLES, WASH } from '../look';
import { type Figure, type Mark, shifted, sideBySide, stacked } from '../page';
import { arrow, numberDisc, pointer, tipSign } from '../signs';
import { size, type Writing } from '../writing';
import { shortNotes } from './cover';
import { wordList } from './wordList';

/** A caution's heading and lines; the words are our own. */
interface Caution {
  readonly about: string;
  readonly lines: readonly string[];
}

/**
 * Common practice; for the points see the cautions of Texas 4-H (Texas A&M AgriLife Extension), NDSU Extension CB111 and
 * University of Kentucky CES 4JF-12PB.
 */
const CAUTIONS: readonly Caution[] = [
  {
    about: 'Cutting',
    lines: [
      'Close the blade every time the cutter leaves your hand, even for a moment. Let a falling cutter fall.',
      'Stand up, hold the blade upright against the ruler, and cut away from yourself, never towards the hand on the ruler.',
      'Keep fingers behind the ruler’s edge. A cut-resistant glove helps. No pins in the fabric or on the mat.',
      'Old blades go into a hard container. Children cut only with a grown-up beside them.',
    ],
  },
  {
    about: 'Pressing',
    lines: [
      'Set the iron on its heel on something steady, its cord out of the way, and unplug it when you are done.',
      'Keep your hand and face out of the steam. Press bias edges straight down; do not pull them.',
    ],
  },
  {
    about: 'Sewing',
    lines: [
      'Take pins out before they reach the presser foot. Stop the machine before fingers go near the needle.',
      'Turn the machine off to change a needle. Keep pins, needles and magnets from children and animals.',
    ],
  },
];

export function overviewPages(composer: Composer, writing: Writing): void {
  const { say } = writing;
  composer.begin(
    say('Before you begin'),
    say(
      'Read through once before cutting. The figures are a plan: cut and sew one block first, and measure it.',
    ),
  );
  sizes(composer, writing);
  composer.heading(say('Symbols'), 1.2);
  composer.add(signs(composer.width, writing), 0.04);
  composer.heading(say('Order of work'), 1.2);
  composer.steps(orderOfWork(writing));
  cautions(composer, writing);
  wordList(composer, writing);
  notes(composer, writing);
}

function sizes(composer: Composer, writing: Writing): void {
  const { project, drawing, say } = writing;
  const { wedge } = project;
  const by = (width: number, height: number) => say('{width} × {height}', size(width, height));
  const finished = finishedBlock(wedge);
  const unfinished = unfinishedBlock(wedge);
  const sewn = sizeWithSeams(drawing, wedge.outerSeam);
  composer.heading(say('Sizes'));
  composer.table(
    [
      { head: say('What'), part: 2.2 },
      { head: say('Measures'), part: 1.6 },
      { head: say('When'), part: 3.2 },
    ],
    [
      [say('Top, finished'), { text: by(drawing.width, drawing.height), style: STYLES.strong }, say('inside the binding')],
      [say('Top, as sewn'), by(sewn.width, sewn.height), say('with the seam all round')],
      [say('Block, finished'), by(finished.width, finished.height), say('once it is sewn in')],
      [say('Block, unfinished'), by(unfinished.width, unfinished.height), say('trimmed, before it is sewn in')],
      [say('Wedge, as cut'), by(cutWedge(wedge).base, wedge.cutHeight), say('base by height, {count} to the block', { count: wedge.perBlock })],
      [say('Seams'), say('{seam}', { seam: { seam: wedge.seam } }), seamWords(writing)],
    ], // biome-ignore format: a table
    0.02,
  );
  const rounded = roundedSumWords(project);
  if (rounded) composer.paragraph(say(rounded), STYLES.small);
}

function seamWords({ project, say }: Writing): string {
  const { seam, assemblySeam, outerSeam } = project.wedge;
  if (seam === assemblySeam && seam === outerSeam) return say('everywhere');
  return say('in the strip sets; {assembly} between wedges, {outer} round the blocks', {
    assembly: { seam: assemblySeam },
    outer: { seam: outerSeam },
  });
}

function orderOfWork({ project, say }: Writing): string[] {
  const { setting } = project;
  const borders = setting.borders.length > 0;
  return [
    say('Cut the strips of the sets by the cutting list, and all other pieces as their turn comes.'),
    say('Sew them into strip sets, press all seams of a set one way, and measure the height of each.'),
    say('Cut wedges tip up and tip down in turn with the template, and keep them sorted by set and tip.'),
    say('Lay out each block from its card; sew pairs, halves, the whole; sew on its corners and trim.'),
    say(borders ? 'Hang the blocks by the map, sew the rows, and add the borders.' : 'Hang the blocks by the map and sew the rows.'),
    say('Layer with batting and backing, quilt, and bind.'),
  ]; // biome-ignore format: a list
}

/** The signs, three to a row. */
function signs(width: number, writing: Writing): Figure {
  const { say, type } = writing;
  const step = width / 3;
  const entry = (marks: readonly Mark[], words: string): Figure =>
    inRow(
      [
        { x: 0, figure: { width: 0.34, height: 0.34, marks } },
        { x: 0.44, figure: textFigure(words, STYLES.small, step - 0.62, type) },
      ],
      'middle',
    );
  const at = { x: 0.15, y: 0.17 };
  const rows = [
    [
      entry([tipSign('up', 0.22, { x: 0.04, y: 0.06 })], say('A wedge tip up: the first strip of its set lies on the rim.')),
      entry([tipSign('down', 0.22, { x: 0.04, y: 0.06 })], say('A wedge tip down: the last strip lies on the rim.')),
      entry(arrow({ x: 0.02, y: 0.17 }, { x: 0.3, y: 0.17 }), say('Press the seam allowance this way.')),
    ],
    [
      entry(numberDisc('5', at, STYLES.smallStrong, type), say('In a block: a place, counted clockwise. On the map: a block.')),
      entry([pointer({ x: 0.15, y: 0.2 }, 0.085, 0), ...numberDisc('5', { x: 0.15, y: 0.2 }, STYLES.labelStrong, type)], say('The point shows where the top of the block’s card goes on the wall.')),
      entry([waste()], say('Fabric left over after the cut.')),
    ],
  ]; // biome-ignore format: a table
  return stacked(
    rows.map((row) => sideBySide(row, step)),
    0.1,
  );
}

function waste(): Mark {
  return {
    kind: 'shape',
    outlines: [0, 1, 2, 3].map((index) => {
      const x = 0.03 + index * 0.07;
      return [
        { x, y: 0.28 },
        { x: x + 0.012, y: 0.28 },
        { x: x + 0.112, y: 0.06 },
        { x: x + 0.1, y: 0.06 },
      ];
    }),
    fill: ink('#a9a9a6'),
    stroke: null,
  };
}

function notes(composer: Composer, { project, say }: Writing): void {
  if (project.notes.trim() === '' || shortNotes(project.notes, composer.width, composer.type) !== null)
    return;
  composer.heading(say('Notes'));
  composer.paragraph(project.notes.trim());
}

/** The cautions on a pale ground, always whole on one page. */
function cautions(composer: Composer, { say, type }: Writing): void {
  const inner = composer.width - 0.5;
  const column = (inner - 0.5) / 3;
  const columns = CAUTIONS.map(({ about, lines }) =>
    stacked(
      [
        textFigure(say(about), STYLES.card, column, type),
        ...lines.map((line) => textFigure(say(line), STYLES.small, column, type)),
      ],
      0.035,
    ),
  );
  const words = stacked(
    [
      sideBySide(columns, column + 0.25),
      textFigure(
        say('The manual of the machine or tool in your hands and the practice of your own workroom come before anything said here.'),
        STYLES.smallStrong,
        inner,
        type,
      ), // biome-ignore format: one sentence
    ],
    0.09,
  );
  const height = words.height + 0.32;
  const ground: Mark = {
    kind: 'shape',
    outlines: [[{ x: 0, y: 0 }, { x: composer.width, y: 0 }, { x: composer.width, y: height }, { x: 0, y: height }]],
    fill: ink(WASH),
    stroke: null,
  }; // biome-ignore format: a box
  composer.heading(say('Cautions'), height + 0.1);
  composer.add({ width: composer.width, height, marks: [ground, ...shifted(words.marks, 0.25, 0.16)] }, 0.04);
}

/** One line for sheets that are used on their own, without the cautions. */
export function cuttingCaution(say: Writing['say']): string {
  return say('Close the blade whenever you put the cutter down, cut away from yourself, and keep your fingers off the ruler’s edge. Your tools’ manuals and your own practice come first.'); // biome-ignore format: one sentence
}
