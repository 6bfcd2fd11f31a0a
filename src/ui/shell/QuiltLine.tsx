// One quilt in a list of quilts to open: its name, and a quiet line of details.
import type { ReactNode } from 'react';

export function QuiltLine(props: { name: string; onOpen: () => void; children: ReactNode }) {
  return (
    <button type="button" className="button bare quilt-line" onClick={props.onOpen}>
      <bdi>{props.name}</bdi> <span className="quiet">{props.children}</span>
    </button>
  );
}
