// The picture of the quilt as it is saved, for the panel and the large area, which ask for the same one.
import { useDeferredValue, useMemo } from 'react';
import { pictureCaption } from '../../../drawing/pictureText';
import type { Pictures } from '../../../model/picture/picture';
import type { Project } from '../../../model/project';
import { pictureSvg } from '../../../store/picture/picture';
import { useApp } from '../../app';
import { usePicturesAtHand } from '../../session';
import { useWrite } from '../../words';

/** The picture made last. */
let last: {
  readonly project: Project;
  readonly pictures: Pictures;
  readonly line: string | null;
  readonly marks: boolean;
  readonly svg: string;
} | null = null;

function madeOnce(project: Project, pictures: Pictures, line: string | null, marks: boolean): string {
  const same = last?.project === project && last.pictures === pictures;
  if (!last || !same || last.line !== line || last.marks !== marks) {
    const svg = pictureSvg(project, pictures, { caption: line, marks });
    last = { project, pictures, line, marks, svg };
  }
  return last.svg;
}

/** The SVG of the open quilt, with caption and marks as they are chosen. */
export function usePictureSvg(): string {
  const write = useWrite();
  const project = useDeferredValue(useApp((app) => app.project));
  const { pictures } = usePicturesAtHand();
  const { caption, marked } = useApp((app) => app.laid);
  const line = caption ? write(pictureCaption(project)) : null;
  return useMemo(() => madeOnce(project, pictures, line, marked), [project, pictures, line, marked]);
}
