// Pictures that a project names by id: what is kept of one, how much is kept, and which pictures a document names. Their bytes
// lie beside the project and never in it; reading them from a file is inFile.ts.

import type * as v from 'valibot';
import { everyCloth } from '../colourway';
import { type Phrase, phrase } from '../phrase';
import type { Project } from '../project';
import type { pictureId } from '../schemaParts';

export type PictureId = v.InferOutput<typeof pictureId>;

/** An image as it is kept. `bytes` are a whole file of its type; width and height are pixels. */
export interface StoredPicture {
  readonly type: 'image/jpeg' | 'image/png' | 'image/webp';
  readonly width: number;
  readonly height: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** An image file walked from its first byte to its last; `parts` are the bytes that draw it, in order. */
export interface PlainImage {
  readonly width: number;
  readonly height: number;
  readonly parts: readonly Uint8Array[];
}

export type Pictures = ReadonlyMap<PictureId, StoredPicture>;

export const NO_PICTURES: Pictures = new Map();

const MEGABYTE = 1024 * 1024;
/** The most pictures of a quilt: a tile for every fabric, and a picture of every block of the largest tops that are sewn. */
export const MOST_PICTURES = 1_000;
/** The most bytes of one picture, and of all pictures of a quilt. */
export const MOST_PICTURE_BYTES = 4 * MEGABYTE;
export const MOST_BYTES_OF_ALL = 48 * MEGABYTE;
/** The most pixels on a side, and in all: four bytes each once the picture is decoded. */
export const MOST_SIDE = 4_096;
export const MOST_PIXELS = 8_000_000;

/** One place of a project that names a picture, and how to write another there. */
export interface PictureUse {
  readonly picture: PictureId;
  /** What it is a picture of, as people know it. */
  readonly what: Phrase;
  /** Mutates the project: for drafts and copies. */
  readonly put: (picture: PictureId) => void;
}

/** Every place of a project that names a picture: fabrics, made-up ones included, and blocks. */
export function pictureUses(project: Project): PictureUse[] {
  return [...usesInFabrics(project), ...usesInBlocks(project)];
}

function usesInBlocks({ blocks }: Project): PictureUse[] {
  return blocks.flatMap((block) => {
    const of = block.kind === 'pictured' ? block : block.photo;
    if (!of) return [];
    const put = (picture: PictureId) => {
      of.picture = picture;
    };
    return [{ picture: of.picture, what: phrase('block {block}', { block: block.number }), put }];
  });
}

function usesInFabrics(project: Project): PictureUse[] {
  return everyCloth(project).flatMap(({ name, cloth }) => {
    if (cloth.kind !== 'photo') return [];
    const { photo } = cloth;
    const put = (picture: PictureId) => {
      photo.picture = picture;
    };
    return [{ picture: photo.picture, what: phrase('{name}', { name }), put }];
  });
}

/** Every picture that a project names. */
export function picturesUsed(project: Project): ReadonlySet<PictureId> {
  return new Set(pictureUses(project).map((use) => use.picture));
}

const ID = /^[0-9a-f]{64}$/;

/** Every text that can be the id of a picture, anywhere in a value: in a history, or in a document that is damaged. */
export function picturesNamed(value: unknown): ReadonlySet<PictureId> {
  const found = new Set<PictureId>();
  const waiting = [value];
  while (waiting.length > 0) {
    const part = waiting.pop();
    if (typeof part === 'string') {
      if (ID.test(part)) found.add(part);
    } else if (part !== null && typeof part === 'object')
      for (const one of Object.values(part)) waiting.push(one);
  }
  return found;
}
