// The fill of a fabric on screen: its colour, or its print from the shared definitions (see ClothDefs).
import { patternFor } from '../../drawing/prints';
import type { Fabric } from '../../model/project';

/** The value of the attribute `fill`. */
export function clothFill(fabric: Fabric): string {
  const pattern = patternFor(fabric);
  return pattern ? `url(#${pattern.id})` : fabric.colour;
}
