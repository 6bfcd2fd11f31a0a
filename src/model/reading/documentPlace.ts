// Says in the maker's words where a project document is wrong: "Block 4, place 2, strip set" for blocks[3].places[1].set. The
// document may be broken anywhere, so it looks everything up and takes nothing for granted.

import { type Phrase, type PhraseValue, phrase } from '../phrase';
import type { Problem } from '../result';
import { isPlainObject } from './migrate';

/** Codes of problems whose own sentence does not name the place. */
const PLACELESS = new Set(['no-such-fabric', 'strip-too-narrow']);

/** The maker's words for each entry; an entry not listed is shown by its own name in quotes. */
const ENTRIES: Readonly<Record<string, string>> = {
  format: 'kind of file', version: 'version of the format', id: 'id', name: 'name', notes: 'notes',
  fabrics: 'fabrics', stripsOnHand: 'strips on hand', clothOnHand: 'fabric on hand', stripSets: 'strip sets', wedge: 'wedge', blocks: 'blocks', wall: 'wall',
  setting: 'setting', preferences: 'preferences', colour: 'colour', cloth: 'fabric', print: 'print', motif: 'motif',
  inks: 'colours of the print', repeat: 'repeat of the print', angle: 'angle of the print', seed: 'shuffle number',
  background: 'whether it is background', fabric: 'fabric', width: 'width', length: 'length', count: 'number', label: 'letter',
  strips: 'strips', pressing: 'pressing direction', firstTip: 'tip of the first wedge', progress: 'progress', cut: 'wedges really cut',
  locked: 'whether it is locked', up: 'tip-up wedges', down: 'tip-down wedges', perBlock: 'wedges to the block',
  cutHeight: 'cut height', seam: 'seam allowance', assemblySeam: 'seam between wedges', outerSeam: 'seam around the block', kind: 'kind',
  number: 'number', places: 'places', cornerFabric: 'corner fabric', cornerShift: 'places of the corners', rows: 'rows',
  columns: 'columns', cells: 'cells', block: 'block', turn: 'turn', pinned: 'whether it is pinned', layout: 'layout',
  sashing: 'sashing', where: 'where it lies', borders: 'borders', weights: 'how much each part counts', unit: 'unit of length', wallLightness: 'wall background',
  usableWidth: 'usable width of fabric', set: 'strip set', tip: 'tip', plain: 'plain squares', cornerRule: 'rule of the corners',
  cornerstones: 'cornerstones', columnGaps: 'gaps between columns', rowGaps: 'gaps between rows', after: 'which gap', ends: 'width at the ends',
  stripLength: 'length of its strips', depth: 'what strips are cut from', corners: 'corners', keys: 'pieces of the border', binding: 'binding', cutWidth: 'cut width', sides: 'side triangles',
  buying: 'fabric and prices', soldBy: 'how fabric is sold', shrinkage: 'shrinkage', straighten: 'fabric to straighten the edge', fatQuarters: 'fat quarters',
  longPieces: 'long pieces', bindingExtra: 'binding to spare', backing: 'backing', overhang: 'overhang', pieced: 'whether it may be pieced', price: 'price',
  kits: 'kits', bolt: 'length of a bolt', cutAs: 'how it is cut', extra: 'other costs per kit', fatQuarterPrice: 'price of a fat quarter',
  currency: 'currency', wedges: 'wedges', bands: 'bands', sure: 'how sure it is', colourways: 'colourways', swaps: 'replaced fabrics', by: 'replacement', oneWay: 'whether the print is directional',
  photo: 'photograph', picture: 'picture', colours: 'main colours', hex: 'colour', share: 'share', spread: 'how busy it is', scale: 'size of its figures', height: 'height',
}; // biome-ignore format: a table

/** One step into a document: the key of a group of entries, or the index in a list. */
export type Step = string | number;

/** The problem with its place put before its sentence, where the sentence does not name the place. The path does not change. */
export function explain(problem: Problem, document: unknown): Problem {
  if (problem.path === '' || !PLACELESS.has(problem.code)) return problem;
  const place = placeInWords(stepsOf(problem.path), document);
  return { ...problem, message: phrase('At {place}: {reason}', { place, reason: problem.message }) };
}

/** The sentence for an entry that is wrong: its place, the reason, and what stands there. No part of it grows with the file. */
export function wrongEntry(steps: readonly Step[], reason: Phrase, document: unknown): Phrase {
  if (steps.length === 0) return phrase('The quilt {reason}.', { reason });
  const place = placeInWords(steps, document);
  const found = steps.reduce<unknown>((at, step) => entryOf(at, step), document);
  if (found === undefined) return phrase('At {place}: {reason}.', { place, reason });
  return phrase('At {place}: {reason}. Found: {found}.', { place, reason, found: shown(found) });
}

/** The sentence for an entry that the schema does not have; its name is the file's own, whatever it is called elsewhere. */
export function unknownEntry(steps: readonly Step[], document: unknown): Phrase {
  const entry = phrase('entry "{key}"', { key: short(String(steps.at(-1) ?? '')) });
  const reason = phrase('Wedgewall does not know this entry');
  if (steps.length < 2) return phrase('At {place}: {reason}.', { place: entry, reason });
  const holder = placeInWords(steps.slice(0, -1), document);
  const place = phrase('{whole}, {part}', { whole: holder, part: entry });
  return phrase('At {place}: {reason}.', { place, reason });
}

/** The longest name, key or value of a file that is quoted whole. */
const QUOTED = 24;

/** A text of the file, short enough for a sentence. */
function short(text: string): string {
  return text.length > QUOTED ? `${text.slice(0, QUOTED - 1)}…` : text;
}

function stepsOf(path: string): Step[] {
  return Array.from(path.matchAll(/\[(\d+)\]|([^.[\]]+)/g), ([, index, key]) =>
    index === undefined ? (key ?? '') : Number(index),
  );
}

function entryOf(value: unknown, step: Step): unknown {
  if (typeof step === 'number') return Array.isArray(value) ? value[step] : undefined;
  return isPlainObject(value) && Object.hasOwn(value, step) ? value[step] : undefined;
}

function placeInWords(steps: readonly Step[], document: unknown): Phrase {
  const parts: Phrase[] = [];
  let at: unknown = document;
  steps.forEach((step, index) => {
    const list = steps[index - 1];
    const holder = at;
    at = entryOf(at, step);
    if (typeof step === 'number') parts.push(itemInWords(String(list ?? ''), step, at, document));
    else if (typeof steps[index + 1] !== 'number') parts.push(entryInWords(step, holder));
  });
  // The general before the particular, joined by commas.
  return parts
    .slice(1)
    .reduce((whole, part) => phrase('{whole}, {part}', { whole, part }), parts[0] ?? phrase(''));
}

function entryInWords(key: string, holder: unknown): Phrase {
  const known = Object.hasOwn(ENTRIES, key) && isPlainObject(holder);
  return known ? phrase(ENTRIES[key]!) : phrase('entry "{key}"', { key: short(key) });
}

/** One item of a list: by its name, letter or number where the document has it, else by its position from 1. */
function itemInWords(list: string, index: number, item: unknown, document: unknown): Phrase {
  const position = index + 1;
  const own = (key: string) => (isPlainObject(item) ? item[key] : undefined);
  switch (list) {
    case 'fabrics':
      return named('fabric {name}', 'fabric {position} in the list', own('name'), position);
    case 'stripSets':
      return named('strip set {name}', 'strip set {position} in the list', own('label'), position);
    case 'blocks':
      return named('block {name}', 'block {position} in the list', own('number'), position);
    case 'colourways':
      return named('colourway {name}', 'colourway {position} in the list', own('name'), position);
    case 'cloth':
      return named('fabric {name}', 'fabric {position} of it', own('name'), position);
    case 'swaps':
      return phrase('replacement {position}', { position });
    case 'stripsOnHand':
      return phrase('strips on hand, row {position}', { position });
    case 'clothOnHand':
      return phrase('fabric on hand, row {position}', { position });
    case 'strips':
      return phrase('strip {position}', { position });
    case 'places':
      return phrase('place {position}', { position });
    case 'wedges':
      return phrase('wedge {position}', { position });
    case 'bands':
      return phrase('band {position}', { position });
    case 'inks':
      return phrase('print colour {position}', { position });
    case 'borders':
      return phrase('border {position} from the inside', { position });
    case 'cells':
      return cellInWords(index, document);
    default:
      return phrase('item {position}', { position });
  }
}

function named(known: string, unknown: string, name: unknown, position: number): Phrase {
  const usable = (typeof name === 'string' && name !== '') || typeof name === 'number';
  return usable ? phrase(known, { name: short(String(name)) }) : phrase(unknown, { position });
}

function cellInWords(index: number, document: unknown): Phrase {
  const columns = entryOf(entryOf(document, 'wall'), 'columns');
  const onPoint = entryOf(entryOf(entryOf(document, 'setting'), 'layout'), 'kind') === 'onPoint';
  if (typeof columns !== 'number' || !Number.isInteger(columns) || columns < 1 || onPoint) {
    return phrase('cell {position}', { position: index + 1 });
  }
  const place = { row: Math.floor(index / columns) + 1, column: (index % columns) + 1 };
  return phrase('row {row}, column {column}', place);
}

/** A value of the document, short enough for a sentence. */
function shown(found: unknown): PhraseValue {
  if (Array.isArray(found)) return phrase('a list of {entries}', { entries: found.length });
  if (isPlainObject(found)) return phrase('a group of entries');
  if (typeof found === 'number' && !Number.isFinite(found)) return phrase('a number too large to read');
  return short(JSON.stringify(typeof found === 'string' ? found.slice(0, QUOTED + 1) : found));
}
