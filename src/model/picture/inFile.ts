// Pictures inside a project file: beside the project's own entries, each a data URL under its id; and what is told of those that
// are missing. readPictures.ts reads them.
import { counted, type Phrase, phrase } from '../phrase';
import type { Project } from '../project';
import { base64Of } from './base64';
import { type PictureId, type Pictures, picturesUsed, pictureUses, type StoredPicture } from './picture';

/** The entry of a file that holds its pictures. */
export const PICTURES_ENTRY = 'pictures';

/** The most sentences on single pictures; a broken file could have a thousand. */
const MOST_TOLD = 5;

/** The picture as a data URL (RFC 2397). */
export function dataUrlOf({ type, bytes }: StoredPicture): string {
  return `data:${type};base64,${base64Of(bytes)}`;
}

/** The entry for those of the named pictures that are there; undefined where none is. */
export function picturesEntry(
  named: ReadonlySet<PictureId>,
  pictures: Pictures,
): Record<PictureId, string> | undefined {
  const there = [...named].sort().flatMap((id) => {
    const picture = pictures.get(id);
    return picture ? [[id, dataUrlOf(picture)] as const] : [];
  });
  return there.length > 0 ? Object.fromEntries(there) : undefined;
}

/** What is to be told where pictures that a project names are not there, a sentence each; empty where all are. */
export function lackingPictures(project: Project, pictures: Pictures): readonly Phrase[] {
  const missing = [...picturesUsed(project)].filter((id) => !pictures.has(id));
  return refusals(project, new Map(missing.map((id) => [id, NOT_KEPT])));
}

const NOT_KEPT = phrase('it is no longer saved here');

/** A sentence for each of the first things whose picture was refused, and what becomes of them. */
export function refusals(project: Project, refused: ReadonlyMap<PictureId, Phrase>): Phrase[] {
  const all = pictureUses(project).flatMap(({ picture, what }) => {
    const reason = refused.get(picture);
    return reason ? [phrase('The picture of {what} was left out: {reason}.', { what, reason })] : [];
  });
  if (all.length === 0) return [];
  const more = all.length - MOST_TOLD;
  return [
    ...all.slice(0, MOST_TOLD),
    ...(more > 0 ? [counted(more, 'So was {count} more.', 'So were {count} more.')] : []),
    phrase('What lacks its picture is drawn in its mean colour.'),
  ];
}
