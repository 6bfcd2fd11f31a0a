// The picture of the quilt as it is saved, for the panel and the large area, which ask for the same one.
import { useDeferredValue, useMemo } from 'react';
import { pictureCaption } from '../../../drawing/pictureText';
import type { Project } from '../../../model/project';
import { pictureSvg } from '../../../store/picture/picture';
import { useApp } from '../../app';
import { useWrite } from '../../words';

/** The picture made last. */
let last: { project: Project; line: string | null; marks: boolean; svg: string } | null = null;

function madeOnce(project: Project, line: string | null, marks: boolean): string {
  if (last?.project !== project || last.line !== line || last.marks !== marks)
    last = { project, line, marks, svg: pictureSvg(project, { caption: line, marks }) };
  return last.svg;
}

/** The SVG of the open quilt, with caption and marks as they are chosen. */
export function usePictureSvg(): string {
  const write = useWrite();
  const project = useDeferredValue(useApp((app) => app.project));
  const { caption, marked } = useApp((app) => app.laid);
  const line = caption ? write(pictureCaption(project)) : null;
  return useMemo(() => madeOnce(project, line, marked), [project, line, marked]);
}
