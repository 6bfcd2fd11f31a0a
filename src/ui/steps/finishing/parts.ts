// The names of the parts of finishing, in their order (store/finishing.ts).
import type { FinishingPart } from '../../../store/finishing';

export const PART_NAMES: Readonly<Record<FinishingPart, string>> = {
  sizes: 'Sizes',
  picture: 'Picture',
  words: 'In words',
  pattern: 'Pattern',
  cutting: 'Fabric and cutting list',
  kits: 'Kits and cost',
  weight: 'Weight and bulk',
  colourways: 'Colourways',
};
