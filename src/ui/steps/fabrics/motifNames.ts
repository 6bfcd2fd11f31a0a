// Names of the generated prints, and the first values of new prints and fabrics.
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

/** First colours of new fabrics, used in turn, so that two new fabrics in a row differ. */
export const FIRST_COLOURS = [
  '#8a3b2e', '#27466b', '#d9a441', '#4f6b52', '#b9c7cf', '#6b3a5b', '#d98e73', '#2f2f36', '#8fa06a', '#e6d3b1',
] as const; // biome-ignore format: a table
