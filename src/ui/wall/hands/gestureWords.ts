// What hands can do on the wall, in a sentence.
import { flows } from '../../flows';

const MOUSE = 'Drag a block onto another to swap them; click one for its tools. The wheel zooms.';
const MOUSE_WHERE_PAGE_SCROLLS =
  'Drag a block onto another to swap them; click one for its tools. Ctrl and the wheel zoom.';
const TOUCH = 'Drag a block onto another to swap them; tap one for its tools. Two fingers zoom.';

/** What hands can do while nothing is picked. */
export function idleWords(): string {
  if (globalThis.matchMedia('(pointer: coarse)').matches) return TOUCH;
  return flows() ? MOUSE_WHERE_PAGE_SCROLLS : MOUSE;
}
