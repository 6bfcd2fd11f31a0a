// Lays out the whole top in inches: the middle of each cell, every piece of the setting, and the finished size. The origin is
// the upper left corner of the finished top, borders included; the binding lies outside it.
import type { Project } from '../model/project';
import type { Inches } from '../model/units';
import { borderedBy, borderPieces } from './borders';
import { onPointSetting } from './onPointSetting';
import type { Point } from './point';
import type { SettingPiece } from './settingPiece';
import { straightSetting } from './straightSetting';
import { finishedBlock } from './wedge';

export interface SettingLayout {
  /** Finished size of the top, inches. */
  readonly width: Inches;
  readonly height: Inches;
  /** Degrees clockwise by which the setting turns every block: 45 on point, else 0. */
  readonly tilt: 0 | 45;
  /** Middle of each cell, in the order of wall.cells. */
  readonly centres: readonly Point[];
  /** Finished size of a block, inches. */
  readonly block: { readonly width: Inches; readonly height: Inches };
  /** Size of the part inside the borders, inches. */
  readonly inner: { readonly width: Inches; readonly height: Inches };
  /** Sashing, setting triangles and plain squares, then the borders from the inside out. Together with the cells they tile the top. */
  readonly pieces: readonly SettingPiece[];
}

const kept = new WeakMap<Project['setting'], { readonly project: Project; readonly layout: SettingLayout }>();

/** The layout of the top. It does not depend on which block hangs where; the last layout of each setting is cached. */
export function layOut(project: Project): SettingLayout {
  const known = kept.get(project.setting);
  const { rows, columns, cells } = project.wall;
  const same =
    known?.project.wedge === project.wedge &&
    known.project.wall.rows === rows &&
    known.project.wall.columns === columns &&
    known.project.wall.cells.length === cells.length;
  if (same) return known.layout;
  const layout = laidOut(project);
  kept.set(project.setting, { project, layout });
  return layout;
}

function laidOut(project: Project): SettingLayout {
  const { layout, borders } = project.setting;
  const inner = layout.kind === 'onPoint' ? onPointSetting(project) : straightSetting(project);
  const { side, end } = borderedBy(borders);
  const moved = (point: Point): Point => ({ x: point.x + side, y: point.y + end });
  return {
    width: inner.width + 2 * side,
    height: inner.height + 2 * end,
    tilt: layout.kind === 'onPoint' ? 45 : 0,
    centres: inner.centres.map(moved),
    block: finishedBlock(project.wedge),
    inner: { width: inner.width, height: inner.height },
    pieces: [
      ...inner.pieces.map((piece) => ({ ...piece, outline: piece.outline.map(moved) })),
      ...borderPieces(project, inner.width, inner.height),
    ],
  };
}
