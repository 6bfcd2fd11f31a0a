// Which room of src/ may import which, types included, and what the pure rooms must not touch. imports.test.ts holds the
// sources to it; biome.json repeats it for the editor, and the test compares the two.

/** Rooms a room may import from, besides itself. */
export const ROOMS: Readonly<Record<string, readonly string[]>> = {
  model: [],
  colour: [],
  geometry: ['model'],
  cloth: ['model', 'geometry', 'colour'],
  cutting: ['model', 'geometry', 'colour', 'cloth'],
  photo: ['model', 'geometry', 'colour', 'cloth'],
  balance: ['model', 'geometry', 'colour', 'cloth'],
  arrange: ['model', 'geometry', 'colour', 'cloth', 'balance', 'cutting'],
  drawing: ['model', 'geometry', 'colour', 'cloth', 'balance', 'cutting'],
  editing: ['model', 'geometry', 'colour', 'cloth', 'balance', 'cutting', 'arrange'],
  store: [
    'model',
    'geometry',
    'colour',
    'cloth',
    'photo',
    'balance',
    'cutting',
    'arrange',
    'drawing',
    'editing',
  ],
  ui: ['model', 'geometry', 'colour', 'cloth', 'photo', 'balance', 'cutting', 'drawing', 'editing', 'store'],
  cli: [
    'model',
    'geometry',
    'colour',
    'cloth',
    'photo',
    'balance',
    'cutting',
    'arrange',
    'drawing',
    'editing',
  ],
};

/** Rooms of which another room may import types only. */
export const TYPES_ONLY: Readonly<Record<string, readonly string[]>> = {
  ui: ['arrange'],
};

/** Short rules in a room of types only which the page may work out for itself, and the rooms that may. */
export const SHORT_RULES: Readonly<Record<string, readonly string[]>> = {
  'src/arrange/search/effort.ts': ['ui'],
  'src/arrange/mend/advice.ts': ['ui'],
};

/** Rooms without React, page, storage, worker, clock or chance. */
export const PURE_ROOMS = [
  'model', 'geometry', 'colour', 'cloth', 'photo', 'balance', 'cutting', 'arrange', 'drawing', 'editing',
] as const; // biome-ignore format: a list

/** Packages (and their parts) no pure room imports, besides everything of Node. */
export const SHELL_PACKAGES = [
  'react', 'react-dom', 'react-aria-components', 'lucide-react', 'zustand', 'idb', 'comlink', '@resvg/resvg-js',
] as const; // biome-ignore format: a list

/** Names of the page, the clock and chance, as a pure room must not use them; null: the name alone is enough. */
export const FORBIDDEN_NAMES: Readonly<Record<string, readonly string[] | null>> = {
  document: null,
  window: null,
  localStorage: null,
  sessionStorage: null,
  indexedDB: null,
  navigator: null,
  performance: null,
  setTimeout: null,
  setInterval: null,
  requestAnimationFrame: null,
  Date: null,
  Math: ['random'],
  crypto: null,
  globalThis: null,
  self: null,
};
