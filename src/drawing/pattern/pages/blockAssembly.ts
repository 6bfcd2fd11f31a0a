// How a block goes together: wedges laid round, pairs, halves, the whole, and its corners, drawn on a block of the quilt with
// the way every seam is pressed.
import { seamLies } from '../../../cutting/wedges/nesting';
import { cornerOutlines, direction, inwardCorners } from '../../../geometry/block';
import type { Point } from '../../../geometry/point';
import { apothem, unfinishedBlock } from '../../../geometry/wedge';
import type { Block, Project } from '../../../model/project';
import type { Inches } from '../../../model/units';
import type { Piece } from '../../drawing';
import { drawBlock } from '../../drawProject';
import { clothMarks } from '../clothMarks';
import type { Composer } from '../composer';
import { textFigure } from '../lettering';
import { STYLES } from '../look';
import { type Figure, type Mark, shifted, sideBySide, stacked } from '../page';
import { arrow, numberDisc } from '../signs';
import { size, type Writing } from '../writing';
import { settingIn } from './settingIn';

/** Wedges that are moved apart together. */
type Group = readonly number[];

const COLUMNS = 3;
/** How a half is joined, by the wedges of a block. */
const HALVES: Readonly<Record<Project['wedge']['perBlock'], string>> = {
  6: 'Join a pair and a single wedge to each half. Check that the long edge is straight.',
  8: 'Join two pairs to each half. Check that the long edge is straight.',
  10: 'Join two pairs and a single wedge to each half. Check that the long edge is straight.',
  12: 'Join three pairs to each half. Check that the long edge is straight.',
};
/** How far groups are drawn apart, as a part of the apothem. */
const APART = 0.12;

export function blockAssemblyPage(composer: Composer, writing: Writing): void {
  const { project, say } = writing;
  const block = exampleBlock(project);
  if (!block) return;
  composer.begin(
    say('Making a block'),
    say('Drawn on block {number}; every block goes together the same way. Seams are pressed to one side all the way round, so that they nest wherever wedges meet.', { number: block.number }),
  ); // biome-ignore format: one sentence
  const step = composer.width / COLUMNS;
  const figures = stages(block, step - 0.25, writing);
  for (let at = 0; at < figures.length; at += COLUMNS) {
    composer.add(sideBySide(figures.slice(at, at + COLUMNS), step), 0.2);
  }
  settingIn(composer, block, writing);
  composer.heading(say('Before you sew on'));
  composer.bullets(advice(writing));
}

/** A block with every place filled, on the wall if there is one; none that is sewn already and shown by its picture. */
function exampleBlock(project: Project): Block | undefined {
  const hung = new Set(project.wall.cells.map((cell) => cell?.block));
  const whole = project.blocks.filter(
    (block) => block.kind === 'pieced' && block.places.every((place) => place !== null),
  );
  return whole.find((block) => hung.has(block.id)) ?? whole[0];
}

function stages(block: Block, width: Inches, writing: Writing): Figure[] {
  const { project, say } = writing;
  const { perBlock } = project.wedge;
  const half = perBlock / 2;
  const places = Array.from({ length: perBlock }, (_, place) => place);
  const halves = [places.slice(0, half), places.slice(half)];
  const pairs = halves.flatMap(pairsOf);
  const single = half % 2 === 1;
  const stage = (title: string, words: string, marks: readonly Mark[]): Figure =>
    stacked(
      [
        { width, height: width, marks },
        textFigure(title, STYLES.card, width, writing.type),
        textFigure(words, STYLES.small, width, writing.type),
      ],
      0.04,
    );
  const { width: across, height: high } = unfinishedBlock(project.wedge);
  return [
    stage(say('1  Lay out'), say('Wedges clockwise from place 1, tip up and tip down as the card says.'), [
      ...ring(block, places.map((place) => [place]), width, writing),
      ...numbers(block, width, writing),
    ]),
    stage(
      say('2  Pairs'),
      single
        ? say('Join neighbours in pairs, from the rim to the middle, matching the seams that nest. One wedge of each half stays single for now.')
        : say('Join neighbours in pairs, from the rim to the middle, matching the seams that nest.'),
      [...ring(block, pairs, width, writing), ...pressing(block, pairs, width, writing)],
    ),
    stage(
      say('3  Halves'),
      say(HALVES[perBlock]),
      [...ring(block, halves, width, writing), ...pressing(block, halves, width, writing)],
    ),
    stage(say('4  Whole block'), say('Pin the middle first, then the nested seams; ease, do not stretch. Press this seam open or round with the others.'), [
      ...ring(block, [places], width, writing),
      ...pressing(block, [places], width, writing).slice(-8),
    ]),
    stage(say('5  Corners'), cornerWords(writing), [
      ...ring(block, [places], width, writing),
      ...corners(block, APART, width, writing),
    ]),
    stage(say('6  Trim'), say('Trim to {width} × {height}, the middle of the block in the middle of the ruler.', size(across, high)), [
      ...ring(block, [places], width, writing),
      ...corners(block, 0, width, writing),
    ]),
  ]; // biome-ignore format: six stages
}

function cornerWords({ project, say }: Writing): string {
  const setIn = inwardCorners(cornerOutlines(project.wedge)[0]!).length > 0;
  return setIn
    ? say('Set a corner piece into each corner, as drawn under “Setting in a corner piece”.')
    : say('Sew the corner triangles to the rims between the straight sides. Press towards the corner.');
}

function pairsOf(half: readonly number[]): Group[] {
  const groups: number[][] = [];
  for (let at = 0; at < half.length; at += 2) groups.push(half.slice(at, at + 2));
  return groups;
}

function scaleOf(width: Inches, { project, drawing }: Writing): number {
  const reach = Math.max(drawing.block.width, drawing.block.height) / 2;
  return width / 2 / (reach + apothem(project.wedge) * APART);
}

/** Middle direction of a group, in wedge steps from place 1. */
function middleOf(group: Group): number {
  return (group[0]! + group.at(-1)!) / 2;
}

/** The groups of wedges, drawn apart along their middles; a whole ring stays together. */
function ring(block: Block, groups: readonly Group[], width: Inches, writing: Writing): Mark[] {
  const { project } = writing;
  const scale = scaleOf(width, writing);
  const pieces = drawBlock(project, block);
  return groups.flatMap((group) => {
    const off = offset(group, block, writing);
    const mine = pieces.filter((piece) => piece.place !== null && group.includes(piece.place - 1));
    return centred(clothMarks(mine, scale, writing), off, scale, width);
  });
}

function offset(group: Group, block: Block, { project }: Writing): Point {
  const { wedge } = project;
  if (group.length >= wedge.perBlock) return { x: 0, y: 0 };
  const away = direction(middleOf(group) + block.cornerShift, wedge.perBlock);
  const by = apothem(wedge) * APART;
  return { x: away.x * by, y: away.y * by };
}

function centred(marks: readonly Mark[], off: Point, scale: number, width: Inches): Mark[] {
  return shifted(marks, width / 2 + off.x * scale, width / 2 + off.y * scale);
}

function numbers(block: Block, width: Inches, writing: Writing): Mark[] {
  const { project, type } = writing;
  const scale = scaleOf(width, writing);
  return block.places.flatMap((_, place) => {
    const out = direction(place + block.cornerShift, project.wedge.perBlock);
    const reach = apothem(project.wedge) * (0.78 + APART) * scale;
    const at = { x: width / 2 + out.x * reach, y: width / 2 + out.y * reach };
    return numberDisc(String(place + 1), at, STYLES.labelStrong, type);
  });
}

/** An arrow over every seam inside a group: clockwise, the same way all round. */
function pressing(block: Block, groups: readonly Group[], width: Inches, writing: Writing): Mark[] {
  const { project } = writing;
  const { perBlock } = project.wedge;
  const scale = scaleOf(width, writing);
  const radius = apothem(project.wedge) * 0.68;
  return groups.flatMap((group) => {
    const off = offset(group, block, writing);
    const whole = group.length === perBlock;
    const seams = whole ? [perBlock / 2 - 1, perBlock - 1] : group.slice(0, -1);
    return seams.flatMap((place) => {
      const along = place + 0.5 + block.cornerShift;
      const spread = (0.09 * perBlock) / (2 * Math.PI) / 0.68;
      const [from, to] = [-spread, spread].map((turn) => {
        const unit = direction(along + turn, perBlock);
        return {
          x: width / 2 + (off.x + unit.x * radius) * scale,
          y: width / 2 + (off.y + unit.y * radius) * scale,
        };
      });
      return arrow(from!, to!);
    });
  });
}

function corners(block: Block, apart: number, width: Inches, writing: Writing): Mark[] {
  const { project } = writing;
  const scale = scaleOf(width, writing);
  const away = apothem(project.wedge) * apart * 0.8;
  const pieces = drawBlock(project, block).filter((piece): piece is Piece => piece.part === 'corner');
  return pieces.flatMap((piece) => {
    const [corner] = piece.outline;
    const length = Math.hypot(corner!.x, corner!.y);
    const off = { x: (corner!.x / length) * away, y: (corner!.y / length) * away };
    return centred(clothMarks([piece], scale, writing), off, scale, width);
  });
}

function advice({ project, say }: Writing): string[] {
  const { assemblySeam } = project.wedge;
  const ordinary = project.blocks.every((block) => {
    const lies = seamLies(project, block);
    return lies.every((lie, place) => lie === null || lie !== lies[(place + 1) % lies.length]);
  });
  const nests = ordinary
    ? say('In every block of this quilt neighbouring seams lie opposite ways, so that they nest.')
    : say(
        'Where a card says so, two neighbours are pressed the same way: press one of them over before you join them.',
      );
  return [
    nests,
    say('Sew the wedges with a {seam} seam. Sewn wider the block comes out smaller, so keep to the seam of your test block.', { seam: { seam: assemblySeam } }),
    say('The rims are on the straight grain, the long sides on the bias: handle those as little as you can.'),
  ]; // biome-ignore format: a list
}
