// What the generated prints are called, and what a new print starts with.
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

/** Colours a new fabric starts with, one after another, so that two new ones are never alike. */
export const FIRST_COLOURS = [
  '#8a3b2e', '#27466b', '#d9a441', '#4f6b52', '#b9c7cf', '#6b3a5b', '#d98e73', '#2f2f36', '#8fa06a', '#e6d3b1',
] as const; // biome-ignore format: a table
