// All keys of the tool: what each is called, what it does and which key events are meant by it. Handlers ask `isKey`; the lists of keys
// on screen show the same rows.

interface Key {
  /** Values of KeyboardEvent.key, letters in lower case; none where what is typed is read elsewhere. */
  readonly keys: readonly string[];
  readonly with?: 'Ctrl' | 'Alt' | 'Shift';
  readonly shown: string;
  readonly does: string;
}

const EVERYWHERE = {
  listKeys: { keys: ['?'], shown: '?', does: 'list all keys' },
  nextPart: {
    keys: ['F6'],
    shown: 'F6, Shift F6',
    does: 'go to the next part of the screen, or the one before',
  },
  undo: { keys: ['z'], with: 'Ctrl', shown: 'Ctrl Z', does: 'undo' },
  redo: { keys: ['y'], with: 'Ctrl', shown: 'Ctrl Y, Ctrl Shift Z', does: 'redo' },
  close: {
    keys: ['Escape'],
    shown: 'Escape',
    does: 'close what was opened last, or put back what is carried',
  },
} as const satisfies Record<string, Key>;

const ARROWS = ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight'] as const;
const TAKE_OUT = ['Delete', 'Backspace'] as const;

const WALL = {
  walk: { keys: ARROWS, shown: 'Arrows', does: 'go from block to block' },
  pick: { keys: ['Enter'], shown: 'Enter', does: 'pick a block' },
  turn: { keys: ['r'], shown: 'R, Shift R', does: 'turn it a quarter' },
  wedgeOn: { keys: [']'], shown: ']', does: 'turn it one wedge forward, if its corners are not on' },
  wedgeBack: { keys: ['['], shown: '[', does: 'turn it one wedge back, if its corners are not on' },
  lift: { keys: [' '], shown: 'Space', does: 'lift it; arrows carry it, Space puts it down' },
  pin: { keys: ['p'], shown: 'P', does: 'pin or unpin it' },
  takeDown: { keys: TAKE_OUT, shown: 'Delete', does: 'take it down to the side table' },
  see: { keys: ['v'], shown: 'V, Shift V', does: 'see the wall another way: grey, three tones, squinting …' },
} as const satisfies Record<string, Key>;

const STRIPS = {
  stripWalk: { keys: ARROWS, shown: 'Arrows', does: 'go from strip to strip' },
  stripLift: { keys: [' '], shown: 'Space', does: 'lift a strip; arrows carry it, Space puts it down' },
  stripOpen: {
    keys: ['Enter'],
    shown: 'Enter',
    does: 'open its set, or add a left-over strip to the open set',
  },
  stripOut: { keys: TAKE_OUT, shown: 'Delete', does: 'take the strip out of its set' },
  stripUp: { keys: ['ArrowUp'], with: 'Alt', shown: 'Alt ↑', does: 'move a strip up in the list of its set' },
  stripDown: { keys: ['ArrowDown'], with: 'Alt', shown: 'Alt ↓', does: 'move it down' },
} as const satisfies Record<string, Key>;

const GRID = {
  gridOn: { keys: ['Tab'], shown: 'Tab', does: 'go to the next width' },
  gridEnter: { keys: ['Enter'], shown: 'Enter', does: 'take the number and go down' },
  gridUp: { keys: ['ArrowUp'], shown: '↑', does: 'go up' },
  gridDown: { keys: ['ArrowDown'], shown: '↓', does: 'go down' },
} as const satisfies Record<string, Key>;

const PHOTO = {
  frameMove: { keys: ARROWS, shown: 'Arrows', does: 'move the frame, a point or the cross' },
  frameSize: { keys: ARROWS, with: 'Shift', shown: 'Shift and arrows', does: 'size the frame' },
  frameOn: { keys: [']'], shown: ']', does: 'turn the frame one degree clockwise' },
  frameBack: { keys: ['['], shown: '[', does: 'turn it one degree back' },
  /** The cross is a button, which Enter presses by itself. */
  crossTap: { keys: [], shown: 'Enter', does: 'take what the cross is on' },
} as const satisfies Record<string, Key>;

const BLOCK = {
  placeOn: { keys: ['ArrowRight', 'ArrowDown'], shown: '→ ↓', does: 'go to the next place' },
  placeBack: { keys: ['ArrowLeft', 'ArrowUp'], shown: '← ↑', does: 'go to the place before' },
  placeTake: {
    keys: ['Enter', ' '],
    shown: 'Enter',
    does: 'choose a place, or trade with the one that is held',
  },
  placeHold: { keys: ['t'], shown: 'T', does: 'hold a wedge to trade it' },
  placeEmpty: { keys: TAKE_OUT, shown: 'Delete', does: 'take the wedge out' },
} as const satisfies Record<string, Key>;

const ENTERING = {
  letters: {
    keys: [],
    shown: 'A … Z',
    does: 'put in a wedge of that set; tip up and tip down alternate, and the next place follows',
  },
  tips: {
    keys: [],
    shown: '↑ ↓',
    does: 'set the tip of the wedge just put in, or of the first one before its letter',
  },
  places: { keys: [], shown: '← →', does: 'go to another place' },
  wedgeOut: {
    keys: ['Backspace'],
    shown: 'Backspace',
    does: 'take the last wedge out; in an empty block, go back to the previous block',
  },
  nextBlock: { keys: ['Enter'], shown: 'Enter', does: 'go to the next block' },
  moreWedges: { keys: ['+'], shown: '+', does: 'correct the count of a set that gave more wedges' },
} as const satisfies Record<string, Key>;

const PAGES = {
  pageOn: { keys: ['ArrowRight', 'PageDown'], shown: '→, Page Down', does: 'next page' },
  pageBack: { keys: ['ArrowLeft', 'PageUp'], shown: '←, Page Up', does: 'previous page' },
  pageFirst: { keys: ['Home'], shown: 'Home', does: 'first page' },
  pageLast: { keys: ['End'], shown: 'End', does: 'last page' },
} as const satisfies Record<string, Key>;

export const KEYS = {
  ...EVERYWHERE,
  ...WALL,
  ...STRIPS,
  ...GRID,
  ...PHOTO,
  ...BLOCK,
  ...ENTERING,
  ...PAGES,
};
type KeyName = keyof typeof KEYS;

/** The parts of the tool with their keys, in the order in which they are listed. */
export const KEY_PARTS: readonly { readonly title: string; readonly rows: Readonly<Record<string, Key>> }[] =
  [
    { title: 'Everywhere', rows: EVERYWHERE },
    { title: 'Design wall', rows: WALL },
    { title: 'Strip sets', rows: STRIPS },
    { title: 'Grid of strips', rows: GRID },
    { title: 'Fabrics from photographs', rows: PHOTO },
    { title: 'Opened block', rows: BLOCK },
    { title: 'Entering sewn blocks', rows: ENTERING },
    { title: 'Pages of the pattern', rows: PAGES },
  ];

/** The rows of the wall and of entering blocks, for the lists beside them. */
export const WALL_KEYS: readonly Key[] = [...Object.values(WALL), EVERYWHERE.undo, EVERYWHERE.redo];
export const ENTERING_KEYS: readonly Key[] = Object.values(ENTERING);

type Pressed = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey'> & {
  readonly shiftKey?: boolean;
};

/** Whether a key event is one of those meant by a row; Shift makes no difference to the rows that do not name it. */
export function isKey(event: Pressed, name: KeyName): boolean {
  const row: Key = KEYS[name];
  const ctrl = event.ctrlKey || event.metaKey;
  if (ctrl !== (row.with === 'Ctrl') || event.altKey !== (row.with === 'Alt')) return false;
  if (row.with === 'Shift' && !event.shiftKey) return false;
  return row.keys.includes(event.key.length === 1 ? event.key.toLowerCase() : event.key);
}
