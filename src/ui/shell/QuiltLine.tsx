// One quilt in a list to open: its name, and a quiet line on it.
import type { ReactNode } from 'react';

export function QuiltLine(props: { name: string; onOpen: () => void; children: ReactNode }) {
  return (
    <button type="button" className="button bare quilt-line" onClick={props.onOpen}>
      <bdi>{props.name}</bdi> <span className="quiet">{props.children}</span>
    </button>
  );
}
