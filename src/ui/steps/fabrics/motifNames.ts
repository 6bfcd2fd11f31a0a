// Names of the generated prints, and the first values of a new print.
import type { Print, PrintMotif } from '../../../model/project';

export const MOTIF_NAMES: Readonly<Record<PrintMotif, string>> = {
  dots: 'Dots', sprig: 'Sprigs', stripe: 'Stripes', gingham: 'Gingham', check: 'Check', crosshatch: 'Crosshatch',
  leaves: 'Leaves', scales: 'Scales', ditsy: 'Ditsy', speckle: 'Speckle', waves: 'Waves', stars: 'Stars',
}; // biome-ignore format: a table

export const FIRST_PRINT: Print = {
  motif: 'sprig',
  inks: ['#f4efe4', '#3d3a36'],
  repeat: 2,
  angle: 0,
  seed: 1,
};
