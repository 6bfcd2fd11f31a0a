// Computes the edge of the binding that shows from the front. The binding covers the seam allowance round the top, so its edge
// lies outside the finished size and is as wide as its seam.
import type { Outline } from '../geometry/point';
import type { Project } from '../model/project';
import type { Inches } from '../model/units';
import type { Piece } from './drawing';

/** The four mitred sides of the edge, and its width in inches; empty and 0 while no binding is chosen. */
export function bindingEdge(
  project: Project,
  top: { readonly width: Inches; readonly height: Inches },
): { binding: readonly Piece[]; edge: Inches } {
  const { binding } = project.setting;
  if (!binding) return { binding: [], edge: 0 };
  const edge = project.wedge.outerSeam;
  const { width, height } = top;
  const corners = (out: Inches) =>
    [
      { x: -out, y: -out },
      { x: width + out, y: -out },
      { x: width + out, y: height + out },
      { x: -out, y: height + out },
    ] as const;
  const outer = corners(edge);
  const inner = corners(0);
  return {
    edge,
    binding: outer.map((corner, side): Piece => {
      const next = (side + 1) % 4;
      const outline: Outline = [corner, outer[next]!, inner[next]!, inner[side]!];
      const grain = side % 2 === 0 ? 0 : 90;
      return { part: 'binding', fabric: binding.fabric, outline, place: null, band: null, grain };
    }),
  };
}
