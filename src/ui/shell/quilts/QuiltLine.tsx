// One quilt in a list of quilts to open: its picture, its name, and a quiet line of details.
import type { ReactNode } from 'react';
import type { Project } from '../../../model/project';
import { QuiltPicture } from './QuiltPicture';

interface Props {
  name: string;
  /** What the picture is of, and what gives the quilt to draw it from. */
  of: string;
  look: () => Promise<Project | null>;
  onOpen: () => void;
  children: ReactNode;
}

export function QuiltLine({ name, of, look, onOpen, children }: Props) {
  return (
    <button type="button" className="button bare quilt-line" onClick={onOpen}>
      <QuiltPicture of={of} open={look} />
      <span className="quilt-words">
        <bdi>{name}</bdi> <span className="quiet">{children}</span>
      </span>
    </button>
  );
}
