// Rows to cut for everything round the blocks: sashing, cornerstones, plain squares, setting triangles, borders, binding.
// How its pieces are put together and named stands in settingGroups.ts.

import { layOut, type SettingLayout } from '../../geometry/setting';
import type { SettingPiece } from '../../geometry/settingPiece';
import { piecesIn } from '../../model/lengths';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { FabricId, Project, StripOnHand } from '../../model/project';
import type { Inches } from '../../model/units';
import { stripsLeftBeside } from '../sets/stripsUnused';
import { bindingRun } from './binding';
import { type NeededPiece, onRuler } from './neededPiece';
import { type Cut, isKey, type SettingGroup, settingGroups, spareOf } from './settingGroups';

/** One row for each kind, size and fabric, in the order of work, without the pieces that are sewn; the binding last. */
export function settingPieces(
  project: Project,
  sewn: (piece: SettingPiece) => boolean = () => false,
): NeededPiece[] {
  const leftovers = stripsLeftBeside(project.stripsOnHand, project.stripSets);
  const rows = settingGroups(project).flatMap((group) => {
    const pieces = group.pieces.filter((piece) => !sewn(piece));
    return pieces.length > 0 ? [neededOf({ ...group, pieces }, project, leftovers)] : [];
  });
  return [...rows, ...bindingPiece(project, layOut(project))];
}

function neededOf(group: SettingGroup, project: Project, leftovers: StripOnHand[]): NeededPiece {
  const { cut, fabric, pieces, step, what, letter } = group;
  const count = rectangles(cut, fabric, pieces, project);
  const keys = isKey(pieces[0]!, project);
  const onHand = keys ? fromLeftovers(cut, fabric, pieces[0]!, count, leftovers) : 0;
  const why = [workings(cut, pieces, count, project)];
  if (keys) {
    why.push(
      counted(onHand, '1 can be cut from strips left over.', '{count} can be cut from strips left over.'),
    );
  }
  const spare = spareOf(pieces[0]!, project);
  if (spare !== null) why.push(spareWords(spare, cut, pieces[0]!, project));
  const { rowFor: _, ...size } = cut;
  return {
    step,
    what,
    ...(letter === null ? {} : { letter }),
    ...size,
    fabric,
    count,
    onHand,
    why,
    ...(keys ? { inPiecedBorder: true } : {}),
  };
}

function spareWords(spare: Inches, cut: Cut, piece: SettingPiece, project: Project): Phrase {
  const long = Math.max(cut.width, cut.height);
  const finished = onRuler(piece.length, project.preferences.unit);
  return phrase(
    spare > 0
      ? 'The length reaches into both mitred corners: {finished} finished, at each end {point} for the seam round the point and {spare} to spare, together {long}.'
      : 'The length reaches into both mitred corners, with nothing to spare.',
    {
      finished: { inches: finished },
      point: { inches: (long - finished) / 2 - onRuler(spare, project.preferences.unit) },
      spare: { inches: onRuler(spare, project.preferences.unit) },
      long: { inches: long },
    },
  );
}

/** Rectangles that give all pieces. One-way triangles have to come from the right side of their square. */
function rectangles(cut: Cut, fabric: FabricId, pieces: readonly SettingPiece[], project: Project): number {
  if (cut.shape === 'halved') return Math.ceil(pieces.length / 2);
  if (cut.shape !== 'quartered') return pieces.length;
  if (!isOneWay(project, fabric)) return Math.ceil(pieces.length / 4);
  // A square cut twice gives one triangle for each side of the top; opposite sides take equally many.
  const level = pieces.filter((piece) => piece.grain === 0).length;
  return Math.ceil(Math.max(level, pieces.length - level) / 2);
}

function isOneWay(project: Project, fabric: FabricId): boolean {
  return project.fabrics.find((one) => one.id === fabric)?.oneWay === true;
}

function workings(cut: Cut, pieces: readonly SettingPiece[], count: number, project: Project): Phrase {
  const piece = pieces[0]!;
  const seam = { seam: project.wedge.outerSeam };
  const cutSize = { width: { inches: cut.width }, height: { inches: cut.height } };
  const values = { ...cutSize, seam, pieces: pieces.length, long: { inches: piece.length } };
  if (cut.shape === 'quartered') {
    return counted(
      count,
      '{pieces} triangles with a finished long side of {long}, four from the square: with seams {width}.',
      '{pieces} triangles with a finished long side of {long}, from {count} squares: with seams {width}.',
      values,
    );
  }
  if (cut.shape === 'halved') {
    return counted(
      count,
      '{pieces} triangles with finished short sides of {long}, two from the square: with seams {width}.',
      '{pieces} triangles with finished short sides of {long}, two from each of {count} squares: with seams {width}.',
      values,
    );
  }
  const level = piece.grain === 0;
  const finished = {
    across: { inches: level ? piece.length : piece.width },
    down: { inches: level ? piece.width : piece.length },
  };
  // What a mitred border has to spare has a working of its own.
  const spare = spareOf(piece, project) ?? 0;
  const say =
    spare > 0
      ? 'Finished {across} × {down}; with its seams and what is to spare {width} × {height}.'
      : 'Finished {across} × {down}; with a {seam} seam on every side {width} × {height}.';
  return phrase(say, { ...values, ...finished });
}

/** Takes strips from those left beside all sets for the pieces of a pieced border; returns how many pieces they give. */
function fromLeftovers(
  cut: Cut,
  fabric: FabricId,
  piece: SettingPiece,
  count: number,
  leftovers: StripOnHand[],
): number {
  const [strip, long] = piece.grain === 0 ? [cut.height, cut.width] : [cut.width, cut.height];
  let left = count;
  const rests: StripOnHand[] = [];
  for (const row of leftovers) {
    const each = piecesIn(row.length, long);
    if (row.fabric !== fabric || row.width < strip - 1e-6 || each === 0) continue;
    const strips = Math.min(row.count, Math.ceil(left / each));
    const cut = Math.min(left, strips * each);
    row.count -= strips;
    left -= cut;
    // The end of the last strip is there for the other sides.
    const onLast = cut - (strips - 1) * each;
    if (strips > 0 && onLast < each) rests.push({ ...row, length: row.length - onLast * long, count: 1 });
  }
  leftovers.push(...rests);
  return count - left;
}

/** The binding as one run round the finished top; nothing until its fabric is chosen. */
function bindingPiece(project: Project, layout: SettingLayout): NeededPiece[] {
  const { binding } = project.setting;
  if (!binding) return [];
  const { unit } = project.preferences;
  const { run, why } = bindingRun(layout.width, layout.height, project.buying.bindingExtra, unit);
  return [
    {
      step: 'binding',
      fabric: binding.fabric,
      what: phrase('Double binding'),
      shape: 'run',
      width: onRuler(binding.cutWidth, unit),
      height: run,
      count: 1,
      onHand: 0,
      upright: false,
      why,
    },
  ];
}
