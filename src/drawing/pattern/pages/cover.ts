// The first page: the quilt, its name, its size and blocks, and its cloth as a row of dots, as along a selvedge.
import { counted, phrase } from '../../../model/phrase';
import { fabricShares } from '../../shares';
import { topFigure } from '../clothMarks';
import type { Composer } from '../composer';
import { linesOf, textFigure } from '../lettering';
import { HAIR, HAIRLINE, MARGIN, STYLES, type Style } from '../look';
import { type Figure, type Mark, shifted } from '../page';
import { stillOpen } from '../stillOpen';
import { clothOf, size, type Writing } from '../writing';

const TOP = 0.75;
const MOST_TITLE_LINES = 3;
const NOTES_PART = 0.75;
const MOST_NOTE_LINES = 3;
/** Longer notes are not tried on the cover at all. */
const MOST_NOTES = 400;

export function coverPage(composer: Composer, writing: Writing): void {
  const { project, drawing, say } = writing;
  const { paper, width } = composer;
  const words = coverWords(composer, writing);
  const wordsAt = paper.height - 0.85 - words.height;
  const room = wordsAt - 0.35 - TOP;
  const scale = Math.min(
    width / (drawing.width + 2 * drawing.edge),
    room / (drawing.height + 2 * drawing.edge),
  );
  const top = topFigure(drawing, scale, writing);
  const x = (paper.width - top.width) / 2;
  const y = TOP + (room - top.height) / 2;
  const frame: Mark = {
    kind: 'shape',
    outlines: [
      [
        { x: 0, y: 0 },
        { x: top.width, y: 0 },
        { x: top.width, y: top.height },
        { x: 0, y: top.height },
      ],
    ],
    fill: null,
    stroke: { ink: HAIRLINE, width: 0.01 },
  };
  composer.page(say(phrase('{name}', { name: project.name })), [
    ...shifted([...top.marks, frame], x, y),
    ...shifted(words.marks, MARGIN, wordsAt),
  ]);
}

function coverWords(composer: Composer, writing: Writing): Figure {
  const { project, drawing, say, type } = writing;
  const { width } = composer;
  const name = project.name.trim() === '' ? say('A quilt of wedges') : project.name;
  const style = titleStyle(name, width, writing);
  const facts = [
    say('{width} × {height} finished', size(drawing.width, drawing.height)),
    ...(drawing.blocks.length > 0 ? [say(counted(drawing.blocks.length, '1 block', '{count} blocks'))] : []),
    say('{width} × {height} each', size(drawing.block.width, drawing.block.height)),
  ].join('  ·  ');
  const parts = [
    ...(drawing.blocks.length > 0 ? [{ figure: selvedge(writing, width), gap: 0.28 }] : []),
    { figure: textFigure(name, style, width, type), gap: 0.06 },
    { figure: textFigure(facts, STYLES.lead, width, type), gap: 0.02 },
    ...stillOpen(project).map((open) => ({
      figure: textFigure(say(open), STYLES.body, width, type),
      gap: 0.02,
    })),
    {
      figure: textFigure(
        shortNotes(project.notes, width, type) ?? say('A pattern for a quilt of strip-pieced wedges'),
        STYLES.small,
        width * NOTES_PART,
        type,
      ),
      gap: 0,
    },
  ];
  let down = 0;
  const marks: Mark[] = [];
  for (const { figure, gap } of parts) {
    marks.push(...shifted(figure.marks, 0, down));
    down += figure.height + gap;
  }
  return { width, height: down, marks };
}

/** Notes short enough for the cover; null where there are none or they need room of their own. */
export function shortNotes(notes: string, width: number, type: Writing['type']): string | null {
  const text = notes.trim();
  if (text === '' || text.length > MOST_NOTES) return null;
  return linesOf(text, STYLES.small, width * NOTES_PART, type).length <= MOST_NOTE_LINES ? text : null;
}

/** As large as the name allows in three lines. */
function titleStyle(name: string, width: number, { type }: Writing): Style {
  const sizes = [STYLES.title, STYLES.longTitle];
  return (
    sizes.find((style) => linesOf(name, style, width, type).length < MOST_TITLE_LINES) ?? STYLES.longestTitle
  );
}

/** A dot of every fabric in the top from light to dark, larger where more of it shows. */
function selvedge(writing: Writing, width: number): Figure {
  const shares = fabricShares(writing.drawing);
  const step = Math.min(0.34, shares.length > 0 ? width / shares.length : 1);
  const most = Math.max(...shares.map((one) => one.share), 1e-9);
  const middle = 0.2;
  const rule = (y: number): Mark => ({
    kind: 'line',
    points: [
      { x: 0, y },
      { x: width, y },
    ],
    stroke: HAIR,
  });
  const dots = shares.map(({ fabric, share }, index): Mark => {
    const radius = step * (0.2 + 0.2 * Math.sqrt(share / most));
    return {
      kind: 'disc',
      centre: { x: step * (index + 0.5), y: middle },
      radius,
      fill: clothOf(writing, fabric.id, 0.2, 0),
      stroke: { ink: '#3a3835', width: 0.005 },
    };
  });
  return { width, height: 2 * middle, marks: [rule(0), rule(2 * middle), ...dots] };
}
