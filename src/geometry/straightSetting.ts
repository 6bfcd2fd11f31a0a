// The straight setting without its borders: where the cells lie, and the sashing between and round them. Single gaps may have
// widths of their own. Coordinates run from the upper left corner of the part inside the borders.
import type { Project, Setting } from '../model/project';
import type { Inches } from '../model/units';
import { halfPlace, isPlain } from '../model/wallCells';
import type { Box, Point } from './point';
import { boxPiece, type SettingPiece } from './settingPiece';
import { finishedBlock } from './wedge';

/** A setting without its borders. */
export interface InnerSetting {
  readonly width: Inches;
  readonly height: Inches;
  /** Middle of each cell, in the order of wall.cells. */
  readonly centres: readonly Point[];
  readonly pieces: readonly SettingPiece[];
}

/** Finished width of the gap after a column or row (counted from 1): its own, or the sashing's; 0 without sashing. */
export function gapAfter(
  sashing: Setting['sashing'],
  which: 'columnGaps' | 'rowGaps',
  after: number,
): Inches {
  if (sashing.where === 'none') return 0;
  return sashing[which]?.find((gap) => gap.after === after)?.width ?? sashing.width;
}

/** The starts of all columns or rows, and the end of the setting in that direction, edge sashing included. */
interface Lines {
  readonly starts: readonly Inches[];
  readonly end: Inches;
}

function lines(
  sashing: Setting['sashing'],
  which: 'columnGaps' | 'rowGaps',
  count: number,
  size: Inches,
): Lines {
  const edge = sashing.where === 'around' ? sashing.width : 0;
  const starts = [edge];
  for (let after = 1; after < count; after += 1) {
    starts.push(starts[after - 1]! + size + gapAfter(sashing, which, after));
  }
  return { starts, end: starts[count - 1]! + size + edge };
}

/** The straight setting of a wall. */
export function straightSetting(project: Project): InnerSetting {
  const { wall, setting } = project;
  const block = finishedBlock(project.wedge);
  const across = lines(setting.sashing, 'columnGaps', wall.columns, block.width);
  const down = lines(setting.sashing, 'rowGaps', wall.rows, block.height);
  const boxes = wall.cells.map((_, index): Box => {
    const place = halfPlace(index, wall);
    return { x: across.starts[place.across / 2]!, y: down.starts[place.down / 2]!, ...block };
  });
  const plain = setting.plain;
  return {
    width: across.end,
    height: down.end,
    centres: boxes.map(({ x, y, width, height }) => ({ x: x + width / 2, y: y + height / 2 })),
    pieces: [
      ...sashingPieces(setting.sashing, across, down, block),
      ...boxes.flatMap((box, index) =>
        plain && isPlain(index, project)
          ? [{ ...boxPiece('plain', plain.fabric, box), place: halfPlace(index, wall) }]
          : [],
      ),
    ],
  };
}

/** A range of x or y: of a gap, a column or a row. */
interface Stretch {
  readonly from: Inches;
  readonly size: Inches;
  /** Half-grid place down or across. */
  readonly place: number;
}

function sashingPieces(
  sashing: Setting['sashing'],
  across: Lines,
  down: Lines,
  block: { readonly width: Inches; readonly height: Inches },
): SettingPiece[] {
  if (sashing.where === 'none') return [];
  const columns = across.starts.map((from, at): Stretch => ({ from, size: block.width, place: 2 * at }));
  const rows = down.starts.map((from, at): Stretch => ({ from, size: block.height, place: 2 * at }));
  const upright = gapsOf(columns, across.end);
  const level = gapsOf(rows, down.end);
  const box = (x: Stretch, y: Stretch): Box => ({ x: x.from, y: y.from, width: x.size, height: y.size });
  const place = (x: Stretch, y: Stretch) => ({ place: { down: y.place, across: x.place } });
  const strip = (x: Stretch, y: Stretch) => ({
    ...levelStrip(sashing, box(x, y)),
    ...place(x, y),
  });
  const short = rows.flatMap((row) =>
    upright.map((gap) => ({ ...uprightStrip(sashing, box(gap, row)), ...place(gap, row) })),
  );
  const stones = sashing.cornerstones;
  if (stones === undefined) {
    return [...short, ...level.map((gap) => strip({ from: 0, size: across.end, place: -1 }, gap))];
  }
  return [
    ...short,
    ...level.flatMap((gap) => columns.map((column) => strip(column, gap))),
    ...level.flatMap((gap) =>
      upright.map((other) => ({ ...boxPiece('cornerstone', stones, box(other, gap)), ...place(other, gap) })),
    ),
  ];
}

/** The sashing between two blocks of a row; its length runs down, even where it is wider than long. */
function uprightStrip(sashing: Setting['sashing'], box: Box): SettingPiece {
  const piece = boxPiece('sashing', sashing.fabric, box);
  return { ...piece, grain: 90, length: box.height, width: box.width };
}

/** The sashing between two rows; its length runs across, even where it is wider than long. */
function levelStrip(sashing: Setting['sashing'], box: Box): SettingPiece {
  const piece = boxPiece('sashing', sashing.fabric, box);
  return { ...piece, grain: 0, length: box.width, width: box.height };
}

/** The gaps before, between and after the stretches; none where two stretches touch. */
function gapsOf(stretches: readonly Stretch[], end: Inches): Stretch[] {
  const ends = [0, ...stretches.map((one) => one.from + one.size)];
  const starts = [...stretches.map((one) => one.from), end];
  return starts
    .map((start, at): Stretch => ({ from: ends[at]!, size: start - ends[at]!, place: 2 * at - 1 }))
    .filter((gap) => gap.size > 1e-9);
}
