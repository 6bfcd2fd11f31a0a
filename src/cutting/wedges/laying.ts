// How wedges are laid and cut on their set: which side is the cut before, where a pair begins anew, which cuts may run across
// the whole set. Drawings and steps both come from here. Where each wedge lies, and how many there are: yield.ts.
import type { Point } from '../../geometry/point';
import { setHeight, wedgeOnSet } from '../../geometry/stripSet';
import { HAIR } from '../../model/lengths';
import { type Phrase, phrase } from '../../model/phrase';
import type { StripSet, WedgePlan } from '../../model/project';
import type { Inches } from '../../model/units';
import { wedgeCuts, wedgeStart } from './yield';

/**
 * `close`: each wedge against the cut before, up to H = h + t. `pairs`: bases on one edge would then overlap, so only every
 * second wedge shares the cut before. `rows`: from H = 2h on, tips up and tips down do not meet. `alone`: one wedge or none.
 */
type Laying = 'alone' | 'close' | 'pairs' | 'rows';

/** How the wedges of a set lie, and how far pairs stand apart along the strips: 2k(H − h − t), inches; 0 where there are none. */
function layingOf(set: StripSet, wedge: WedgePlan): { readonly laying: Laying; readonly gap: Inches } {
  if (wedgeCuts(set, wedge).length < 2) return { laying: 'alone', gap: 0 };
  const height = setHeight(set.strips, wedge.seam);
  const pitch = wedgeStart(1, height, wedge);
  if (pitch <= 0) return { laying: 'rows', gap: 0 };
  const gap = wedgeStart(2, height, wedge) - 2 * pitch;
  return gap > HAIR ? { laying: 'pairs', gap } : { laying: 'close', gap: 0 };
}

/** One cut of the rotary cutter on a set, in the inches of wedgeOnSet. */
export interface CutLine {
  readonly from: Point;
  readonly to: Point;
  /** True where it runs from edge to edge of the set; false where it stops at the trimmed tip. */
  readonly through: boolean;
}

/** Every cut that frees the wedges of a set, each once, from the left: sides, and tips that do not reach the edge. */
export function cutLines(set: StripSet, wedge: WedgePlan): CutLine[] {
  const height = setHeight(set.strips, wedge.seam);
  const trims = height - wedge.cutHeight > HAIR;
  const { laying } = layingOf(set, wedge);
  return wedgeCuts(set, wedge).flatMap(({ start, tip }, index): CutLine[] => {
    const [left, right, tipRight, tipLeft] = wedgeOnSet(start, tip, height, wedge) as [
      Point,
      Point,
      Point,
      Point,
    ];
    const second = index % 2 === 1;
    const shared = index > 0 && (laying === 'close' || (laying === 'pairs' && second));
    const across = laying === 'close' || (laying === 'pairs' && !second);
    const reach = height / wedge.cutHeight;
    return [
      ...(shared ? [] : [sideCut(left, tipLeft, laying === 'close' ? reach : 1)]),
      ...(trims ? [{ from: tipLeft, to: tipRight, through: false }] : []),
      sideCut(right, tipRight, across ? reach : 1),
    ];
  });
}

/** From the corner of the rim past the corner of the tip, `reach` times as long as the side; 1 stops at the tip. */
function sideCut(from: Point, tip: Point, reach: number): CutLine {
  const to = { x: from.x + (tip.x - from.x) * reach, y: from.y + (tip.y - from.y) * reach };
  return { from, to, through: reach !== 1 };
}

/** A gap that a ruler cannot show. */
const UNSEEN: Inches = 1 / 32;

/**
 * What a maker does once the first wedge is laid at the left end: where the next ones lie and how far to cut, in order. The
 * template is laid by corners and cuts, never by a rounded length: the gap only tells what that looks like. Nothing for a set
 * that gives no wedge.
 */
export function layingWords(set: StripSet, wedge: WedgePlan): Phrase[] {
  const { laying, gap } = layingOf(set, wedge);
  const trims = setHeight(set.strips, wedge.seam) - wedge.cutHeight > HAIR;
  const count = wedgeCuts(set, wedge).length;
  const more = count > 2;
  if (count === 0) return [];
  switch (laying) {
    case 'alone':
      return [phrase(trims ? ALONE_AND_TIP : ALONE)];
    case 'close':
      return [phrase(CLOSE), phrase(trims ? EDGE_TO_EDGE_AND_TIP : EDGE_TO_EDGE)];
    case 'rows':
      return [phrase(ROWS), ...(more ? [phrase(ROWS_GO_ON)] : []), phrase(ROWS_SIDES)];
    default: {
      const next = phrase(gap < UNSEEN ? NEXT_PAIR_NEAR : NEXT_PAIR, { gap: { inches: gap } });
      return [phrase(PAIR), ...(more ? [next] : []), phrase(OTHER_SIDES)];
    }
  }
}

const ALONE = 'Cut along both sides of the template.';
const ALONE_AND_TIP = 'Cut along both sides of the template, and trim the tip.';
const CLOSE = 'Turn the template for each next wedge and lay it close against the cut before.';
const EDGE_TO_EDGE = 'Cut both sides right across the set, from edge to edge.';
const EDGE_TO_EDGE_AND_TIP =
  'Cut both sides right across the set, from edge to edge; then trim the tip along the template.';
const PAIR =
  'Turn the template for the second wedge and lay it close against the cut before. Only this cut between the two runs right across the set, from edge to edge.';
const NEXT_PAIR =
  'Turn it again and begin the next pair with the left corner of its rim on the corner of the fabric, where the last rim on that edge ended. It then lies about {gap} off the cut before: do not push it closer.';
const NEXT_PAIR_NEAR =
  'Turn it again and begin the next pair with the left corner of its rim on the corner of the fabric, where the last rim on that edge ended. It then lies a hair off the cut before: do not push it closer.';
const OTHER_SIDES =
  'Cut all other sides along the template only, from the rim to the tip, and trim the tip: a cut that ran on could nick the next wedge.';
const ROWS =
  'Wedges tip up and tip down lie above each other, in two rows. Turn the template and begin the second row at the left end too, with the rim on the other edge.';
const ROWS_GO_ON = 'In both rows the next rim begins where the last one ended.';
const ROWS_SIDES =
  'Cut along the template only, from the rim to the tip, and trim the tip: a cut that ran on could nick the wedge of the other row.';
