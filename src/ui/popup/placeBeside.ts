// Where a small box goes beside a button: below or above it, on the other side where there is no room, and within the screen.

export type Placement = 'bottom' | 'top';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Pixels that stay free at the edges of the screen. */
const EDGE = 12;

/** The top left corner of the box, in pixels of the screen, `gap` pixels from the button. */
export function placeBeside(
  button: { readonly left: number; readonly top: number } & Size,
  box: Size,
  screen: Size,
  placement: Placement,
  gap: number,
): { readonly x: number; readonly y: number } {
  const above = button.top - gap - box.height;
  const below = button.top + button.height + gap;
  const fitsAbove = above >= EDGE;
  const fitsBelow = below + box.height <= screen.height - EDGE;
  const wanted = placement === 'top' ? fitsAbove || !fitsBelow : !fitsBelow && fitsAbove;
  const middle = button.left + button.width / 2 - box.width / 2;
  return {
    x: Math.max(EDGE, Math.min(middle, screen.width - EDGE - box.width)),
    y: wanted ? above : below,
  };
}
