// What is worked on while fabrics are made from photographs: each photograph with its light and its true size, and the frames laid on it,
// one for each fabric. Plain changes of this state; sitting.ts runs the work.

import type { Point } from '../../geometry/point';
import type { Problem } from '../../model/result';
import type { Inches } from '../../model/units';
import { measured } from '../../photo/fabric/measured';
import { DIRECTIONAL } from '../../photo/fabric/wayUp';
import { DAYLIGHT, type Light } from '../../photo/light/light';
import type { Frame } from '../../photo/pixels/frame';
import type { FabricAsk, FabricFound, OpenedPhoto } from './photoJobs';
import type { PhotoFile } from './photoReader';

/** A fabric as it was last read, with addresses of its pictures on the page. */
export interface PatchRead {
  readonly found: FabricFound;
  readonly hrefs: { readonly tile: string; readonly before: string; readonly after: string };
}

/** A frame on a photograph, and the fabric it will be. */
export interface Patch {
  readonly key: number;
  readonly frame: Frame;
  /** The name that was typed; null: as the tool proposes. */
  readonly name: string | null;
  /** Whether somebody says that the print is directional; null: as the tool proposes. */
  readonly oneWay: boolean | null;
  readonly background: boolean;
  readonly read: PatchRead | null;
  readonly problems: readonly Problem[];
  /** What was asked for when it was read, or could not be (`askOf` as text); null before. */
  readonly asked: string | null;
}

/** What was pointed at as white or grey, and the light that follows. `at` is null where the light is another photograph's. */
export interface PhotoLight {
  readonly light: Light;
  readonly at: Frame | null;
}

/** What a neutral spot is in truth: white as paper, a photographer's grey card, or some grey. */
export const NEUTRALS = ['white', 'card', 'grey'] as const;
export type Neutral = (typeof NEUTRALS)[number];

export interface PhotoAtWork {
  readonly file: PhotoFile;
  readonly name: string;
  readonly opened: OpenedPhoto;
  readonly href: string;
  readonly light: PhotoLight | null;
  readonly neutral: Neutral;
  /** Two points on a ruler, in pixels, and the distance between them; null where no ruler is laid. */
  readonly ruler: { readonly one: Point; readonly other: Point; readonly apart: Inches | null } | null;
  /** Pixels to the inch; null where the true size is not known yet. */
  readonly perInch: number | null;
  readonly patches: readonly Patch[];
  /** The patch in hand. */
  readonly patch: number;
}

/** What is to be read of a patch. The seed is the same for all, so that the same frame gives the same fabric. */
export function askOf({ light, perInch }: PhotoAtWork, { frame }: Patch): FabricAsk {
  return { frame, light: light?.light ?? DAYLIGHT, white: light?.at ?? null, perInch, seed: 1 };
}

export function isStale(photo: PhotoAtWork, patch: Patch): boolean {
  return patch.asked !== JSON.stringify(askOf(photo, patch));
}

/** A patch that is stale by its true size alone, measured by the new one; null where it must be read anew. */
export function measuredAnew(photo: PhotoAtWork, patch: Patch): Patch | null {
  const { asked, read, problems } = patch;
  if (asked === null || read === null || problems.length > 0) return null;
  const ask = askOf(photo, patch);
  const { perInch } = ask;
  if (JSON.stringify({ ...JSON.parse(asked), perInch }) !== JSON.stringify(ask)) return null;
  return { ...patch, read: { ...read, found: measured(read.found, perInch) }, asked: JSON.stringify(ask) };
}

/** Whether the print of a patch is directional: as somebody says, else as it looks. */
export function isDirectional({ oneWay, read }: Patch): boolean {
  return oneWay ?? (read?.found.wayUp ?? 0) >= DIRECTIONAL;
}

/** The patch in hand. */
export function patchInHand(photo: PhotoAtWork): Patch | null {
  return photo.patches.find(({ key }) => key === photo.patch) ?? null;
}

export function newPatch(key: number, frame: Frame): Patch {
  return { key, frame, name: null, oneWay: null, background: false, read: null, problems: [], asked: null };
}

/** Where the frame lies at first: the middle third of the photograph, square. */
export function firstFrame({ width, height }: Pick<OpenedPhoto, 'width' | 'height'>): Frame {
  const side = Math.round(Math.min(width, height) / 2.5);
  return { x: width / 2, y: height / 2, width: side, height: side, angle: 0 };
}

/** Whether a patch lies where it was laid at first, without a name of its own. */
export function isUntouched({ frame, name }: Patch, opened: OpenedPhoto): boolean {
  return name === null && JSON.stringify(frame) === JSON.stringify(firstFrame(opened));
}
