// The pages of templates at true size: a sheet to check the printer, then the wedge, the corner piece and, on point, the setting
// triangles, each on one page or on several that are joined by crosses.
import { CENTIMETRES_PER_INCH, type Inches, type LengthUnit } from '../../../model/units';
import type { Composer } from '../composer';
import { line, type Type, textFigure, textWidth } from '../lettering';
import { EDGE, FIRM, HAIR, MARGIN, STYLES } from '../look';
import { type Figure, type Mark, type Paper, shifted, type Template } from '../page';
import { cuttingCaution } from '../pages/overview';
import type { Writing } from '../writing';
import { cornerTemplate } from './cornerTemplate';
import { settingTemplates } from './settingTemplates';
import { type Tile, tilesOf } from './tiles';
import { wedgeTemplate } from './wedgeTemplate';

const SIDE: Inches = 0.4;
const TOP: Inches = 1.25;
const FOOT: Inches = 0.75;
const CENTIMETRES_5: Inches = 5 / CENTIMETRES_PER_INCH;
/** What is measured to see whether the printer kept true size: the side of the smaller square, and the bar on every sheet. */
const MEASURES: Readonly<Record<LengthUnit, { readonly side: Inches; readonly words: string }>> = {
  in: { side: 1, words: '1 inch' },
  cm: { side: 2 / CENTIMETRES_PER_INCH, words: '2 cm' },
};

/** Adds the pages of templates. */
export function templatePages(composer: Composer, writing: Writing): void {
  checkSheet(composer, writing);
  // Letters of crosses run on through all templates, so that no sheet is joined to one of another.
  let crosses = 0;
  for (const template of [wedgeTemplate(writing), cornerTemplate(writing), ...settingTemplates(writing)]) {
    crosses += sheets(template, crosses, composer, writing);
  }
}

/** Adds the sheet that shows whether the printer keeps true size. */
function checkSheet(composer: Composer, { project, say, type }: Writing): void {
  composer.begin(
    say('Templates'),
    say('Print these pages at true size: choose 100 % or “actual size”, never “fit to page”. Then measure both squares below on every edge.'),
    0,
    true,
  ); // biome-ignore format: one sentence
  composer.add(squares(project.preferences.unit, say, type), 0.2);
  composer.skip(0.1);
  composer.paragraph(say('If they measure more or less than they say, the printer has changed the size: set it right and print again before you cut anything.')); // biome-ignore format: one sentence
  composer.heading(say('Using the templates'));
  composer.steps([
    say('Glue the sheet to card or trace it on template plastic. Where a template runs over several sheets, lay cross on cross, check that the lines run on, and tape.'),
    say('Cut on the solid outer line. The dashed line is the seam.'),
    say('Lay the base along the raw edge of the strip set and keep the thin lines level with its seams: so the strips lie level in every wedge.'),
    say('Short marks at the edge are notches: matched with the neighbour’s, they keep both from creeping.'),
  ]); // biome-ignore format: a list
  composer.skip(0.1);
  composer.paragraph(cuttingCaution(say), STYLES.small);
}

function squares(unit: LengthUnit, say: Writing['say'], type: Type): Figure {
  const square = (x: Inches, side: Inches, words: string): Mark[] => [
    {
      kind: 'shape',
      outlines: [[{ x, y: 0 }, { x: x + side, y: 0 }, { x: x + side, y: side }, { x, y: side }]],
      fill: null,
      stroke: EDGE,
    },
    ...line(words, STYLES.smallStrong, x + side / 2, side / 2 + 0.03, type, 'middle'),
  ]; // biome-ignore format: a square
  const { side, words } = MEASURES[unit];
  return {
    width: side + 0.6 + CENTIMETRES_5,
    height: CENTIMETRES_5,
    marks: [...square(0.02, side, say(words)), ...square(side + 0.6, CENTIMETRES_5, say('5 cm'))],
  };
}

/** The area a template may take on a sheet. */
function templateArea(paper: Paper): { width: Inches; height: Inches } {
  return { width: paper.width - 2 * SIDE, height: paper.height - TOP - FOOT };
}

/** Adds the sheets of one template and returns how many crosses join them. */
function sheets(template: Template, before: number, composer: Composer, writing: Writing): number {
  const { paper } = composer;
  const area = templateArea(paper);
  const { tiles, crosses } = tilesOf(template.figure, area, writing.type, before);
  for (const tile of tiles) {
    composer.page(writing.say('Templates'), [
      ...head(template, tile, tiles.length, paper, writing),
      ...shifted(tile.marks, SIDE + (area.width - tile.width) / 2, TOP),
    ]);
  }
  return crosses;
}

function head(template: Template, tile: Tile, tiles: number, paper: Paper, writing: Writing): Mark[] {
  const { project, say, type } = writing;
  const { side, words: long } = MEASURES[project.preferences.unit];
  const width = paper.width - 2 * MARGIN - 1.5;
  const title = tiles === 1 ? template.title : say('{title}: sheet {sheet} of {sheets}', { title: template.title, sheet: tile.number, sheets: tiles }); // biome-ignore format: one line
  const words = textFigure(template.words, STYLES.small, width, type);
  return [
    ...line(title, STYLES.heading, MARGIN, 0.62, type),
    ...shifted(words.marks, MARGIN, 0.69),
    ...scaleBar({ x: paper.width - MARGIN - side, y: 0.6 }, side, say(long), type),
  ];
}

/** A bar of this length; every sheet has one, because it may be printed alone. */
function scaleBar(
  at: { readonly x: Inches; readonly y: Inches },
  long: Inches,
  words: string,
  type: Type,
): Mark[] {
  const tick = (x: Inches): Mark => ({
    kind: 'line',
    points: [
      { x, y: at.y - 0.06 },
      { x, y: at.y + 0.06 },
    ],
    stroke: FIRM,
  });
  return [
    { kind: 'line', points: [at, { x: at.x + long, y: at.y }], stroke: HAIR },
    tick(at.x),
    tick(at.x + long),
    ...line(words, STYLES.label, at.x + long / 2 - textWidth(words, STYLES.label, type) / 2, at.y + 0.15, type),
  ]; // biome-ignore format: a bar
}
