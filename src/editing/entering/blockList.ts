// Blocks as a list of text, one to the line: '7: A↑ C↓ …'. Written from the blocks there are, and read with every fault by line and place.
import { findBlock } from '../../model/find';
import { whyPlacesLocked } from '../../model/freedom';
import { counted, type Phrase, phrase } from '../../model/phrase';
import {
  BLOCK_PROGRESS,
  type Block,
  type Place,
  type Project,
  type StripSet,
  type Tip,
} from '../../model/project';
import { type EnteredBlock, samePlaces } from './enterBlocks';
import { named } from './entry';

/** The stages of progress as the screen names them. */
export type ProgressNames = Readonly<Record<Block['progress'], string>>;

/** A block of the list, and its line from 1. */
export interface ListedBlock extends EnteredBlock {
  readonly line: number;
}

export interface ListProblem {
  /** Line and place from 1; no place where the whole line is meant. */
  readonly line: number;
  readonly place: number | null;
  readonly message: Phrase;
}

export interface BlockList {
  readonly blocks: readonly ListedBlock[];
  readonly problems: readonly ListProblem[];
}

const EMPTY = '–';
const MARKS = { up: '↑', down: '↓' } as const;
const PLAIN_LABEL = /^[A-Z]+$/;

/** All pieced blocks by number: number, wedges clockwise from place 1, – for an empty place, and the progress in brackets. */
export function writeBlockList(project: Project, names: ProgressNames): string {
  const labels = new Map(project.stripSets.map(({ id, label }) => [id, quoted(label)]));
  const word = (wedge: Place | null) => (wedge ? `${labels.get(wedge.set)}${MARKS[wedge.tip]}` : EMPTY);
  return project.blocks
    .filter(({ kind }) => kind === 'pieced')
    .toSorted((one, other) => one.number - other.number)
    .map(({ number, places, progress }) => `${number}: ${places.map(word).join(' ')} (${names[progress]})`)
    .join('\n');
}

/** A name that is no plain capitals is quoted, so that nothing in it is read as a tip or a space between wedges. */
function quoted(label: string): string {
  return PLAIN_LABEL.test(label) ? label : `"${label.replaceAll('"', '""')}"`;
}

/**
 * Reads a list. Number and progress may be left out: without a number a line goes into the next planned block that is empty, else it is a
 * new block; without a progress it has the one given. Tips may be arrows, u and d, or words. Lines with a fault are not among the blocks.
 */
export function readBlockList(
  project: Project,
  text: string,
  progress: Block['progress'],
  names: ProgressNames,
): BlockList {
  const problems: ListProblem[] = [];
  const lines = text
    .split(/\r?\n/)
    .map((content, at) => readLine(project, content, at + 1, progress, names))
    .filter((one) => one !== null);
  const blocks: ListedBlock[] = [];
  const taken = new Set(lines.map(({ number }) => number));
  const numbers = new Set<number>();
  const free = project.blocks
    .filter((block) => block.progress === 'planned' && block.places.every((wedge) => wedge === null))
    .sort((one, other) => one.number - other.number)
    .filter(({ number }) => !taken.has(number));
  for (const line of lines) {
    problems.push(...line.problems);
    if (line.number !== null && numbers.has(line.number))
      problems.push(
        whole(line.line, phrase('Block {block} stands on an earlier line.', { block: line.number })),
      );
    else if (line.problems.length === 0) {
      const there =
        line.number === null ? free.shift() : project.blocks.find(({ number }) => number === line.number);
      const held = there && !samePlaces(there.places, line.places) ? whyPlacesLocked(there) : null;
      if (held) problems.push(whole(line.line, held));
      else blocks.push({ ...line, block: there?.id ?? null });
    }
    if (line.number !== null) numbers.add(line.number);
  }
  return { blocks: numbered(project, blocks, taken), problems };
}

/** New blocks without a number get the lowest that no block and no line has. */
function numbered(
  project: Project,
  blocks: readonly ListedBlock[],
  taken: ReadonlySet<number | null>,
): ListedBlock[] {
  const used = new Set([...taken, ...project.blocks.map(({ number }) => number)]);
  let next = 1;
  return blocks.map(({ line, block, number, places, progress }) => {
    if (block !== null) return { line, block, number: findBlock(project, block)!.number, places, progress };
    if (number !== null) return { line, block, number, places, progress };
    while (used.has(next)) next += 1;
    used.add(next);
    return { line, block, number: next, places, progress };
  });
}

interface Line extends ListedBlock {
  readonly problems: readonly ListProblem[];
}

function whole(line: number, message: Phrase): ListProblem {
  return { line, place: null, message };
}

/** A number before the wedges, perhaps after a word: "Block 7:", "7.", "7)". */
const NUMBER = /^\s*(?:\p{L}+\s+)?(\d+)\s*[:.)]/u;
/** Words in brackets at the end. */
const STAGE = /\(([^()"]*)\)\s*$/;

function readLine(
  project: Project,
  content: string,
  line: number,
  usual: Block['progress'],
  names: ProgressNames,
): Line | null {
  if (content.trim() === '') return null;
  const problems: ListProblem[] = [];
  const before = NUMBER.exec(content);
  const number = before ? Number(before[1]) : null;
  const rest = content.slice(before?.[0].length ?? 0);
  const stage = STAGE.exec(rest);
  const progress = stage ? stageOf(stage[1]!, names) : usual;
  if (number !== null && (number < 1 || number > 10_000))
    problems.push(whole(line, phrase('A block has a number from 1 to {most}.', { most: 10_000 })));
  if (progress === null)
    problems.push(
      whole(
        line,
        phrase('“{words}” is no progress of a block. There are: {stages}.', {
          words: stage![1]!.trim(),
          stages: { list: BLOCK_PROGRESS.map((one) => names[one]) },
        }),
      ),
    );
  const words = wordsOf(stage ? rest.slice(0, stage.index) : rest);
  const { perBlock } = project.wedge;
  const places = words.map((word, at): Place | null => {
    const read = readWedge(word, project.stripSets);
    if (read === null || 'set' in read) return read;
    problems.push({ line, place: at + 1, message: read });
    return null;
  });
  if (words.length !== perBlock)
    problems.push(
      whole(
        line,
        counted(
          words.length,
          'It has 1 wedge; a block has {perBlock}. Write {empty} for an empty place.',
          'It has {count} wedges; a block has {perBlock}. Write {empty} for an empty place.',
          { perBlock, empty: EMPTY },
        ),
      ),
    );
  return { line, block: null, number, places, progress: progress ?? usual, problems };
}

function stageOf(words: string, names: ProgressNames): Block['progress'] | null {
  const sought = words.trim().toLowerCase();
  return BLOCK_PROGRESS.find((one) => one === sought || names[one].toLowerCase() === sought) ?? null;
}

/** A wedge as it is written: the name of its set, and its tip; an empty place has neither. */
interface Word {
  readonly label: string;
  readonly quoted: boolean;
  readonly tip: Tip | null;
  /** The whole word where its last letters were taken for a tip; an arrow that follows takes them back into the name. */
  readonly whole?: string;
}

/** A quoted name; or letters up to a space, a comma or an arrow, with the arrow that stands right after them; or an arrow. */
const WORD = /"((?:[^"]|"")*)"|([^\s,;|"↑↓▲▼]+)([↑↓▲▼]?)|[↑↓▲▼]/gu;
const TIPS: Readonly<Record<string, Tip>> = {
  '↑': 'up', '▲': 'up', '^': 'up', u: 'up', up: 'up', '↓': 'down', '▼': 'down', v: 'down', d: 'down', down: 'down',
}; // biome-ignore format: a table
const ARROW = /^[↑↓▲▼]$/;
const LETTERS_AND_TIP = /^(.+?)(up|down|[udv^])$/i;

function wordsOf(text: string): Word[] {
  const words: Word[] = [];
  for (const [found, inQuotes, letters, arrow] of text.matchAll(WORD)) {
    const last = words.at(-1);
    const tip = inQuotes === undefined && !arrow ? TIPS[found.toLowerCase()] : undefined;
    if (inQuotes !== undefined)
      words.push({ label: inQuotes.replaceAll('""', '"'), quoted: true, tip: null });
    else if (tip && last?.tip === null && !isEmpty(last)) words[words.length - 1] = { ...last, tip };
    else if (tip && last?.whole && ARROW.test(found))
      words[words.length - 1] = { label: last.whole, quoted: false, tip };
    else if (arrow) words.push({ label: letters!, quoted: false, tip: TIPS[arrow]! });
    else words.push(withTip(found));
  }
  return words;
}

function withTip(word: string): Word {
  const parts = LETTERS_AND_TIP.exec(word);
  if (!parts) return { label: word, quoted: false, tip: null };
  return { label: parts[1]!, quoted: false, tip: TIPS[parts[2]!.toLowerCase()]!, whole: word };
}

function isEmpty({ label, quoted: inQuotes }: Word): boolean {
  return !inQuotes && /^[-–—_]$/.test(label);
}

/** The wedge of a word; null for an empty place; or what is wrong with it. */
function readWedge(word: Word, sets: readonly StripSet[]): Place | Phrase | null {
  if (isEmpty(word)) return null;
  const set = named(word.label, sets);
  if (!word.tip) {
    return set
      ? phrase('“{word}” does not say which way its tip points: {up} or {down}.', {
          word: word.label,
          up: `${word.label}${MARKS.up}`,
          down: `${word.label}${MARKS.down}`,
        })
      : phrase('“{word}” is no wedge.', { word: word.label });
  }
  return set ? { set: set.id, tip: word.tip } : phrase('There is no set {set}.', { set: word.label });
}
