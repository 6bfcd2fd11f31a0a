// The steps of setting the top in words. What is sewn to what, its order and its letters come from the steps as data
// (cutting/sewing); here are only the sentences.
import type { Joined, Line, Part, SewingStep } from '../../../cutting/sewing/step';
import { afterRows } from '../../../cutting/yardage/placeWords';
import { mitreSpare } from '../../../cutting/yardage/settingGroups';
import { sizeWithSeams } from '../../../geometry/allowance';
import { layOut } from '../../../geometry/setting';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { Border } from '../../../model/project';
import { nameOf, size, type Writing } from '../writing';
import { cellPlace, isEmpty } from './cellPlace';
import { inGroups } from './piecedRuns';

type StepOf<Does extends SewingStep['does']> = Extract<SewingStep, { does: Does }>;

/** Everything inside the borders, one text to a numbered step; the check of its size at the end, where no borders follow. */
export function settingWords(steps: readonly SewingStep[], writing: Writing): string[] {
  const { project, say } = writing;
  const first = say('Lay the whole top out by the map, each block the way up the map shows.');
  const plain = project.setting.plain ? [say('Plain squares take their turn in the rows like blocks.')] : [];
  const sewn = sizeWithSeams(layOut(project).inner, project.wedge.outerSeam);
  // Before borders it is measured where they are cut.
  const check =
    project.setting.borders.length > 0
      ? []
      : [
          say(
            'Measure the top through its middle, both ways: with the seams on it is {width} × {height}.',
            size(sewn.width, sewn.height),
          ),
        ];
  return [
    [first, ...plain, ...emptyWords(writing)].join(' '),
    ...steps.flatMap((step) => stepWords(step, writing)),
    ...check,
  ]; // biome-ignore format: a list
}

/** Which places of the wall have no block, and that they need one; nothing where every place has. */
function emptyWords({ project, say }: Writing): string[] {
  const empty = [...project.wall.cells.keys()].filter((cell) => isEmpty(cell, project));
  if (empty.length === 0) return [];
  const places = empty.map((cell) => say(cellPlace(cell, project)));
  return [
    say(
      counted(
        empty.length,
        'One place on the wall is empty: {places}. Hang a block there before you sew its row: without it nothing after it fits.',
        '{count} places on the wall are empty: {places}. Hang blocks there before you sew their rows: without them nothing after them fits.',
        { places: places.join('; ') },
      ),
    ),
  ];
}

function stepWords(step: SewingStep, writing: Writing): string[] {
  switch (step.does) {
    case 'rows':
      return step.slanted ? slantedRowWords(step, writing) : rowWords(step, writing);
    case 'sashing':
      return [sashingWords(step, writing)];
    case 'join':
      return step.slanted ? slantedJoinWords(step, writing) : joinWords(step, writing);
    case 'corners':
      return cornerWords(step, writing);
    case 'trim':
      return [trimWords(step, writing)];
    case 'border':
      return [];
    default:
      return step satisfies never;
  }
}

function rowWords({ lines }: StepOf<'rows'>, writing: Writing): string[] {
  const { project, say } = writing;
  const { sashing, plain } = project.setting;
  const [sew, press] =
    sashing.where !== 'none'
      ? ['Sew each row from the left.', 'Press towards the sashing.']
      : plain
        ? ['Sew each row from the left.', 'Press towards the plain squares.']
        : lines.length === 1
          ? [
              'Sew the blocks together from the left, matching the seams of their corners.',
              'Press the seams one way.',
            ]
          : [
              'Sew the blocks of each row together from the left, matching the seams of their corners.',
              'Press the seams of odd rows to the left and of even rows to the right, so that they nest.',
            ];
  return [[say(sew), ...partLines(lines, rowLabel, writing), say(press)].join('\n')];
}

function slantedRowWords({ lines }: StepOf<'rows'>, writing: Writing): string[] {
  const { project, say } = writing;
  const triangles = lines.flatMap(({ parts }) => parts.filter((part) => part.kind === 'triangle'));
  const open = lines.some(({ parts }) => parts[0]?.kind !== 'triangle' || parts.at(-1)?.kind !== 'triangle');
  const sew = 'Sew each diagonal row from its upper left end to its lower right end.';
  const press =
    project.setting.sashing.where === 'none'
      ? 'Press the seams of neighbouring rows opposite ways, so that they nest.'
      : 'Press towards the sashing.';
  const rows = [
    say(sew),
    ...partLines(lines, rowLabel, writing),
    [...(open ? [say('An end in a corner of the top stays open for its setting corner.')] : []), say(press)].join(' '),
  ].join('\n'); // biome-ignore format: a list
  if (triangles.length === 0) return [rows];
  const letters = lettersOf(triangles);
  return [
    rows,
    say(
      'The long side of a side triangle {letters} lies on the edge of the top. Along the top and the right edge its square corner is even with the lower left side of the row, along the left edge and the bottom with the upper right side; its other point sticks out. Cut such points off even with the rows.',
      { letters },
    ),
  ];
}

function sashingWords({ lines, slanted }: StepOf<'sashing'>, writing: Writing): string {
  const { say } = writing;
  const sew = slanted
    ? 'Sew sashing and cornerstones into diagonal rows of their own.'
    : 'Sew horizontal sashing and cornerstones into rows of their own, from the left.';
  const label = (numbers: readonly number[]) => phrase('Sashing {place}', { place: afterRows(numbers) });
  return [say(sew), ...partLines(lines, label, writing), say('Press towards the sashing.')].join('\n');
}

function joinWords({ joined }: StepOf<'join'>, writing: Writing): string[] {
  const { project, say } = writing;
  if (project.setting.sashing.where === 'none') {
    return [say('Sew the rows together, from row 1 at the top down, matching the seams. Press these seams one way.')];
  }
  const sew = say('Sew rows and sashing together from the top down: {order}. Match the seams and press towards the sashing.', {
    order: orderOf(joined, writing),
  });
  const strips = joined.filter(({ kind }) => kind === 'strip');
  const upright = joined.some(({ kind, line }) => kind === 'row' && line.parts.some((part) => part.kind === 'piece' && part.cut.piece.part === 'sashing'));
  if (strips.length === 0 || !upright) return [sew];
  const { inner } = layOut(project);
  const { width } = sizeWithSeams(inner, project.wedge.outerSeam);
  return [
    say('Measure the rows; they should be {length} long. Cut the horizontal strips {letters} to the length of the rows, and mark on them where the vertical pieces meet them.', {
      length: { inches: width },
      letters: lettersOf(strips.flatMap(({ line }) => line.parts)),
    }),
    sew,
  ];
} // biome-ignore format: long sentences

function slantedJoinWords({ joined }: StepOf<'join'>, writing: Writing): string[] {
  const { project, say } = writing;
  if (project.setting.sashing.where === 'none') {
    return [say('Sew the rows together, from row 1 in the upper right corner to the lower left, matching the seams. Press these seams one way.')];
  }
  const sew = say('Sew rows and sashing together from the upper right corner to the lower left: {order}. Match the seams and press towards the sashing.', {
    order: orderOf(joined, writing),
  });
  const strips = joined.filter(({ kind }) => kind === 'strip');
  if (strips.length === 0) return [sew];
  return [
    say('Each end of a long strip {letters} is even with the outer edge of the last short piece in one of the two rows beside it, whichever reaches further. Mark on the strip where the short pieces meet it.', {
      letters: lettersOf(strips.flatMap(({ line }) => line.parts)),
    }),
    sew,
  ];
} // biome-ignore format: long sentences

function cornerWords({ corners }: StepOf<'corners'>, { project, say }: Writing): string[] {
  const letters = [...new Set(corners.map(({ cut }) => cut.letter ?? ''))];
  return [
    say(
      project.setting.sashing.where === 'none'
        ? 'Sew on the setting corners {letters} last: the middle of the long side on the middle of the square in the corner. Both points stick out. Press outwards.'
        : 'Sew on the setting corners {letters} last: the middle of the long side on the middle of the sashing in the corner. Both points stick out. Press outwards.',
      { letters: { list: letters } },
    ),
  ];
}

function trimWords({ beyond, points }: StepOf<'trim'>, { project, say }: Writing): string {
  const { sashing } = project.setting;
  const { outerSeam: seam } = project.wedge;
  const values = {
    beyond: { inches: beyond },
    seam: { seam },
    points: phrase(points === 'plain' ? 'the points of the plain squares' : 'the points of the blocks'),
  };
  if (sashing.where === 'none') return say('Trim all four edges {seam} outside {points}, the corners square.', values);
  return say(
    sashing.cornerstones === undefined
      ? 'Trim all four edges {beyond} outside {points}, the corners square: {seam} outside the line through the middle of the sashing where it ends on the edge.'
      : 'Trim all four edges {beyond} outside {points}, the corners square: {seam} outside the line through the middle of the cornerstones on the edge, from corner to corner.',
    values,
  );
} // biome-ignore format: long sentences

type Label = (numbers: readonly number[]) => Phrase;

const rowLabel: Label = (numbers) =>
  phrase(numbers.length === 1 ? 'Row {rows}' : 'Rows {rows}', { rows: numbersInWords(numbers) });

/** 1, 2, 3 in a row as 1 to 3. */
function numbersInWords(numbers: readonly number[]): Phrase {
  const [first, last] = [numbers[0]!, numbers.at(-1)!];
  const inOrder = numbers.length > 2 && last - first === numbers.length - 1;
  return inOrder ? phrase('{first} to {last}', { first, last }) : phrase('{numbers}', { numbers: { list: numbers } });
} // biome-ignore format: one phrase

/** The parts of every line in their order, lines alike together; nothing where all of them are blocks, and there. */
function partLines(lines: readonly Line[], label: Label, { project, say }: Writing): string[] {
  const isThere = (part: Part) => part.kind === 'block' && !isEmpty(part.cell, project);
  if (lines.every(({ parts }) => parts.every(isThere))) return [];
  const wordsOf = (part: Part) =>
    part.kind === 'block' ? say(isThere(part) ? 'block' : 'empty place') : (part.cut.letter ?? '');
  const alike = new Map<string, number[]>();
  for (const { parts, number } of lines) {
    const words = inGroups(parts.map(wordsOf));
    alike.set(words, [...(alike.get(words) ?? []), number]);
  }
  return Array.from(alike, ([parts, numbers]) => say('{label}: {parts}', { label: label(numbers), parts }));
} // biome-ignore format: one map

/** Letters of parts, each once. */
function lettersOf(parts: readonly Part[]): { list: string[] } {
  const letters = parts.flatMap((part) => (part.kind === 'block' ? [] : [part.cut.letter ?? '']));
  return { list: [...new Set(letters)].toSorted() };
}

function orderOf(joined: readonly Joined[], { say }: Writing): string {
  const words = joined.map(({ kind, line }) => {
    if (kind === 'row') return say('row {row}', { row: line.number });
    const [part] = line.parts;
    return kind === 'strip' && part?.kind === 'piece' ? (part.cut.letter ?? '') : say('sashing');
  });
  return words.join(' · ');
}

/** How a border is sewn on. */
export function borderWords({ border: index, corners }: StepOf<'border'>, border: Border, writing: Writing): string {
  const { say } = writing;
  const wide =
    border.ends === undefined
      ? phrase('{width} wide', { width: { inches: border.width } })
      : phrase('{width} wide at the sides and {ends} at top and bottom', {
          width: { inches: border.width },
          ends: { inches: border.ends },
        });
  const values = { border: index + 1, wide, fabric: nameOf(writing, border.fabric) };
  const which = border.keys
    ? say('Border {border}, {wide} finished, is pieced: join the pieces of each side in the order given below, and measure it against the top before you sew it on; take seams in or out by a thread where it differs.', values)
    : say('Border {border}, of {fabric}, is {wide} finished.', values);
  return `${which} ${say(cornersOfBorder(border, corners), { spare: { inches: mitreSpare(border) ?? 0 } })}`;
} // biome-ignore format: long sentences

function cornersOfBorder(border: Border, corners: StepOf<'border'>['corners']): string {
  if (corners === 'butted') return 'Sew on the sides first and press outwards, then the top and the bottom across the new width.'; // biome-ignore format: one sentence
  if (corners === 'cornerstones') {
    return 'Sew on the sides. Sew cornerstones to both ends of the top and bottom pieces, and sew those on. Press every seam towards the border.';
  }
  const even = border.ends === undefined || Math.abs(border.ends - border.width) < 1e-9;
  if ((mitreSpare(border) ?? 0) <= 0) {
    return even
      ? 'Sew on all four sides by their middles, stopping a seam’s width before each corner, join the ends at 45 degrees, and press outwards.'
      : 'Sew on all four sides by their middles, stopping a seam’s width before each corner, join the ends on the line from the inner to the outer corner, and press outwards.';
  }
  return even
    ? 'Pin all four sides on by their middles; each end has {spare} to spare beyond the seam round its point. Sew, stopping a seam’s width before each corner, join the ends at 45 degrees, trim what is over, and press outwards.'
    : 'Pin all four sides on by their middles; each end has {spare} to spare beyond the seam round its point. Sew, stopping a seam’s width before each corner, join the ends on the line from the inner to the outer corner, trim what is over, and press outwards.';
}
