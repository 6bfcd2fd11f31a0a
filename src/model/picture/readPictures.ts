// Reads the pictures in a project file. What they say of themselves is not believed. One that is refused costs the quilt nothing but the picture.
import { counted, type Phrase, phrase } from '../phrase';
import type { Project } from '../project';
import { isPlainObject } from '../reading/migrate';
import { bytesOfBase64 } from './base64';
import { typeOfBytes } from './image';
import { refusals } from './inFile';
import {
  MOST_PICTURE_BYTES,
  type PictureId,
  type Pictures,
  picturesUsed,
  pictureUses,
  type StoredPicture,
} from './picture';
import { sha256 } from './sha256';
import { MEGABYTE, roomFor, type TakenPicture, takePicture } from './takePicture';

export interface ReadPictures {
  readonly pictures: Pictures;
  /** What was left out and what is missing, a sentence each. */
  readonly remarks: readonly Phrase[];
}

const NOT_THERE = phrase('it is not in the file');

/**
 * Reads the entry for the pictures of `project`, which was read from the same file and is changed where a picture gets another id,
 * because it held more than it draws. Nothing is thrown, whatever the entry is.
 */
export function readPictures(project: Project, entry: unknown): ReadPictures {
  const given = isPlainObject(entry) ? entry : {};
  const shelf = new Shelf();
  const refused = new Map<PictureId, Phrase>();
  const kept = new Map<PictureId, PictureId>();
  for (const id of picturesUsed(project)) {
    const taken = Object.hasOwn(given, id) ? shelf.take(id, given[id]) : NOT_THERE;
    if (typeof taken === 'string') kept.set(id, taken);
    else refused.set(id, taken);
  }
  const remarks = [...refusals(project, refused), ...unusedIn(given, project)];
  if (entry !== undefined && given !== entry)
    remarks.push(phrase('The pictures in the file cannot be read: they should be a group of entries.'));
  for (const use of pictureUses(project)) use.put(kept.get(use.picture) ?? use.picture);
  return { pictures: shelf.pictures, remarks };
}

function unusedIn(given: Readonly<Record<string, unknown>>, project: Project): Phrase[] {
  const used = picturesUsed(project);
  const unused = Object.keys(given).filter((id) => !used.has(id)).length;
  const one = 'A picture in the file that nothing uses was left out.';
  return unused > 0
    ? [counted(unused, one, '{count} pictures in the file that nothing uses were left out.')]
    : [];
}

/** The pictures taken so far, within the limits for all of them. */
class Shelf {
  readonly pictures = new Map<PictureId, StoredPicture>();

  /** The id under which the picture of a data URL is kept from here on, or why it is refused. */
  take(id: PictureId, url: unknown): PictureId | Phrase {
    const parts = typeof url === 'string' ? partsOf(url) : null;
    if (!parts) return phrase('it is not written as a picture in a file is');
    // Four letters for three bytes.
    if (parts.text.length > (MOST_PICTURE_BYTES / 3 + 1) * 4)
      return phrase('a picture is at most {most} MB', { most: MOST_PICTURE_BYTES / MEGABYTE });
    const bytes = bytesOfBase64(parts.text);
    if (!bytes) return phrase('its letters are no base64');
    if (sha256(bytes) !== id) return phrase('it is not the picture that its number says');
    const real = typeOfBytes(bytes);
    if (real && real !== parts.type)
      return phrase('it says that it is {type} and is {real}', { type: parts.type, real });
    const taken = takePicture(bytes);
    return taken.ok ? this.keep(taken.value) : taken.problems[0]!.message;
  }

  private keep({ id, picture }: TakenPicture): PictureId | Phrase {
    if (this.pictures.has(id)) return id;
    const full = roomFor(picture, this.pictures);
    if (full) return full.message;
    this.pictures.set(id, picture);
    return id;
  }
}

/** The type and the text of a data URL of base64 (RFC 2397); null where it is none. */
function partsOf(url: string): { readonly type: string; readonly text: string } | null {
  const head = /^data:([a-z0-9.+/-]{1,40});base64,/.exec(url);
  return head ? { type: head[1]!, text: url.slice(head[0].length) } : null;
}
