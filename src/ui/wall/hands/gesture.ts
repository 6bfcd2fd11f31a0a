// The rules of hands on the wall and the side table: carrying a block to another cell or the table, turning it by its handle or
// two fingers, panning and pinching the view, and the outcome of each. Pure: hands.ts runs the rules, useGestures.ts carries the
// outcomes out.
import type { Drawing } from '../../../drawing/drawing';
import type { Point } from '../../../geometry/point';
import { cellIndexOf, findBlock, turnsOf } from '../../../model/find';
import { whyHangingLocked } from '../../../model/freedom';
import type { Phrase } from '../../../model/phrase';
import type { BlockId, Project } from '../../../model/project';
import { cellAt } from './cellAt';
import type { Hand, Rules, Spot } from './hands';
import { bearing, turnFrom, turnsIn } from './turning';

/** The thing under a hand when it came down. */
export type Pressed =
  | { readonly kind: 'cell'; readonly cell: number; readonly block: BlockId | null }
  | { readonly kind: 'table'; readonly block: BlockId }
  | { readonly kind: 'handle'; readonly block: BlockId }
  | { readonly kind: 'ground' };

export interface Carry {
  readonly kind: 'carry';
  readonly block: BlockId;
  /** The block's cell; null for a block of the side table. */
  readonly from: number | null;
  readonly at: Point;
  readonly over: number | null;
  readonly overTable: boolean;
  /** Carried by keys: then it is told where it is, and what letting go there would do. */
  readonly byKeys?: true;
}

export type Gesture =
  /** Panning or pinching; useView.ts keeps the view itself. */
  | { readonly kind: 'view' }
  | Carry
  /** Turning a block by its handle or two fingers; degrees clockwise from where it hung. */
  | { readonly kind: 'twist'; readonly block: BlockId; readonly degrees: number };

/** The outcome of a gesture or a tap. */
export type Outcome =
  | { readonly kind: 'pick'; readonly block: BlockId | null }
  | { readonly kind: 'hang'; readonly block: BlockId; readonly cell: number }
  | { readonly kind: 'swap'; readonly cell: number; readonly other: number }
  | { readonly kind: 'takeDown'; readonly block: BlockId }
  | { readonly kind: 'turn'; readonly block: BlockId; readonly by: number }
  | { readonly kind: 'refuse'; readonly why: Phrase };

/** The state of the wall that the rules need. */
export interface Scene {
  readonly project: Project;
  readonly picked: BlockId | null;
  /** Whether the next cell that is tapped changes places with the picked block. */
  readonly swapping: boolean;
  /** Whether the wall is larger than its frame, so that a finger moves the view. */
  readonly larger: boolean;
  readonly drawing: Drawing;
  /** Converts a spot of the window to quilt inches. */
  readonly toQuilt: (spot: Spot) => Point;
  readonly onTable: (spot: Spot) => boolean;
}

const VIEW = { kind: 'view' } as const;

/** The rules of hands in a scene. */
export function wallRules(scene: Scene): Rules<Pressed, Gesture, Outcome> {
  const { project } = scene;
  const begin = (what: Pressed, hand: Hand) => {
    if (what.kind === 'handle') return { gesture: twistByHandle(what.block, hand, scene) };
    if (what.kind === 'ground' || what.block === null) return { gesture: VIEW };
    // A finger that means to move the view comes down on some block or other; it carries the one that was picked before.
    const moves = hand.touch && scene.larger && what.kind === 'cell' && what.block !== scene.picked;
    if (moves) return { gesture: VIEW };
    const block = findBlock(project, what.block);
    const why = block ? whyHangingLocked(project, block) : null;
    if (!block || why) return { refused: why ? ({ kind: 'refuse', why } as const) : null };
    return { gesture: carry(what.block, what.kind === 'cell' ? what.cell : null, hand, scene) };
  };
  return {
    restsFirst: false,
    begin,
    join: (hands) => {
      const hung = scene.drawing.blocks.find((one) => one.block === scene.picked);
      const onPicked = hands.every(
        ({ at }) => hung && cellAt(scene.drawing, scene.toQuilt(at)) === hung.cell,
      );
      return hung && onPicked ? { kind: 'twist', block: hung.block, degrees: 0 } : VIEW;
    },
    follow: (gesture, what, hands) => {
      const [hand, second] = hands;
      if (!hand || gesture.kind === 'view') return gesture;
      if (gesture.kind === 'twist' && second) return { ...gesture, degrees: twistOfTwo(hand, second) };
      // When one of two fingers is lifted, the other neither turns nor carries.
      if (what === null) return gesture;
      if (gesture.kind === 'twist') return twistByHandle(gesture.block, hand, scene);
      return carry(gesture.block, gesture.from, hand, scene);
    },
    tap: (what) => tapped(what, scene),
    end: (gesture) => ended(gesture, project),
  };
}

/**
 * The outcome of a press without a gesture, and of Enter: an empty cell hangs the picked block of the side table, a block is picked;
 * but where the picked block is to change places, it does so with the cell.
 */
export function tapped(
  what: Pressed,
  { project, picked, swapping }: Pick<Scene, 'project' | 'picked' | 'swapping'>,
): Outcome | null {
  if (what.kind === 'handle') return null;
  const hangs = picked === null ? -1 : cellIndexOf(project, picked);
  const waits = picked !== null && hangs < 0;
  if (swapping && hangs >= 0) {
    if (what.kind === 'cell' && what.cell !== hangs) return { kind: 'swap', cell: hangs, other: what.cell };
    return { kind: 'pick', block: picked };
  }
  if (what.kind === 'ground') return { kind: 'pick', block: null };
  if (what.kind === 'cell' && what.block === null && waits)
    return { kind: 'hang', block: picked, cell: what.cell };
  return { kind: 'pick', block: what.block === picked ? null : what.block };
}

/** The outcome of letting go. */
export function ended(gesture: Gesture, project: Project): Outcome | null {
  if (gesture.kind === 'view') return null;
  if (gesture.kind === 'twist') {
    const by = turnsIn(gesture.degrees, turnsOf(project.wedge.perBlock));
    return by === 0 ? null : { kind: 'turn', block: gesture.block, by };
  }
  const { block, from, over, overTable } = gesture;
  if (overTable) return from === null ? null : { kind: 'takeDown', block };
  if (over === null || over === from) return null;
  return from === null ? { kind: 'hang', block, cell: over } : { kind: 'swap', cell: from, other: over };
}

function carry(block: BlockId, from: number | null, hand: Hand, scene: Scene): Carry {
  const { drawing, toQuilt } = scene;
  const middle = from === null ? null : drawing.blocks.find((one) => one.cell === from)?.centre;
  const start = toQuilt(hand.start);
  const point = toQuilt(hand.at);
  // The hand carries a block by the point it took hold of, but a card of the side table, which is smaller, by its middle.
  const at = middle ? { x: point.x - start.x + middle.x, y: point.y - start.y + middle.y } : point;
  const overTable = scene.onTable(hand.at);
  return { kind: 'carry', block, from, at, over: overTable ? null : cellAt(drawing, point), overTable };
}

function twistByHandle(block: BlockId, { start, at }: Hand, { drawing, toQuilt }: Scene): Gesture {
  const middle = drawing.blocks.find((one) => one.block === block)?.centre;
  const degrees = middle ? turnFrom(bearing(middle, toQuilt(start)), bearing(middle, toQuilt(at))) : 0;
  return { kind: 'twist', block, degrees };
}

function twistOfTwo(first: Hand, second: Hand): number {
  return turnFrom(bearing(first.start, second.start), bearing(first.at, second.at));
}

/** The change of the view by moving hands, screen pixels; none when a hand came or went. */
export interface ViewChange {
  readonly across: number;
  readonly down: number;
  /** Zoom about a spot of the window; null for one hand. */
  readonly zoom: { readonly factor: number; readonly about: Spot } | null;
}

/** The change of the view by hands that moved; null when a hand came or went. */
export function viewChange(before: readonly Hand[], after: readonly Hand[]): ViewChange | null {
  if (after.length === 0 || before.length !== after.length) return null;
  const [from, to] = [middleOf(before), middleOf(after)];
  const gaps = [gapOf(before), gapOf(after)] as const;
  const factor = gaps[0] > 0 ? gaps[1] / gaps[0] : 1;
  const zoom = after.length > 1 && factor !== 1 ? { factor, about: to } : null;
  return { across: to.x - from.x, down: to.y - from.y, zoom };
}

function middleOf(hands: readonly Hand[]): Spot {
  const sum = (along: 'x' | 'y') => hands.reduce((total, hand) => total + hand.at[along], 0);
  return { x: sum('x') / hands.length, y: sum('y') / hands.length };
}

function gapOf([first, second]: readonly Hand[]): number {
  return first && second ? Math.hypot(first.at.x - second.at.x, first.at.y - second.at.y) : 0;
}
