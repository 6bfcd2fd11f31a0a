// Pictures that a project names by id: what is kept of one, how much is kept, and which pictures a document names. Their bytes
// lie beside the project and never in it; reading them from a file is readPictures.ts.

import type * as v from 'valibot';
import { everyCloth } from '../colourway';
import type { Project } from '../project';
import type { pictureId } from '../schemaParts';

export type PictureId = v.InferOutput<typeof pictureId>;

export const PICTURE_TYPES = ['image/jpeg', 'image/png', 'image/webp'] as const;

/** An image as it is kept. `bytes` are a whole file of its type; width and height are pixels. */
export interface StoredPicture {
  readonly type: (typeof PICTURE_TYPES)[number];
  readonly width: number;
  readonly height: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

export type Pictures = ReadonlyMap<PictureId, StoredPicture>;

export const NO_PICTURES: Pictures = new Map();

const MEGABYTE = 1024 * 1024;
/** The most pictures of a quilt: a tile for every fabric, and a picture of every block of the largest tops that are sewn. */
export const MOST_PICTURES = 1_000;
/** The most bytes of one picture, and of all pictures of a quilt. */
export const MOST_PICTURE_BYTES = 4 * MEGABYTE;
export const MOST_BYTES_OF_ALL = 64 * MEGABYTE;
/** The most pixels on a side, and in all: four bytes each once the picture is decoded. */
export const MOST_SIDE = 4_096;
export const MOST_PIXELS = 8_000_000;

/** Every picture that a project names, of fabrics (made-up ones included) and of blocks. */
export function picturesUsed(project: Project): ReadonlySet<PictureId> {
  return new Set([
    ...everyCloth(project).flatMap(({ cloth }) => (cloth.kind === 'photo' ? [cloth.photo.picture] : [])),
    ...project.blocks.flatMap((block) => (block.kind === 'pictured' ? [block.picture] : [])),
  ]);
}
