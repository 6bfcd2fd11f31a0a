// Where wedges of one set and tip are on the wall, as a spot: they are lit and all else is dimmed.
import { wedgeUses } from '../../../cutting/wedges/uses';
import type { Piece } from '../../../drawing/drawing';
import { drawProject } from '../../../drawing/drawProject';
import { type Outline, placed } from '../../../geometry/point';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { Project, StripSetId, Tip } from '../../../model/project';
import type { Spot } from '../../../store/app';

export function spotId(set: StripSetId, tip: Tip): string {
  return `wedges ${set} ${tip}`;
}

/** Whether a spot shows wedges. */
export function showsWedges(spot: Spot | null): boolean {
  return spot?.id.startsWith('wedges ') ?? false;
}

/** The spot of all wedges of this set and tip that hang on the wall. */
export function lightWedges(project: Project, set: StripSetId, tip: Tip): Spot {
  const uses = wedgeUses(project)(set, tip);
  const marks = drawProject(project).blocks.flatMap((hung) =>
    uses
      .filter(({ block }) => block === hung.block)
      .map(({ place }) => ({
        kind: 'light' as const,
        outline: placed(wedgeOutline(hung.pieces, place), hung.quarters, hung.centre, hung.tilt),
      })),
  );
  return { id: spotId(set, tip), marks, blocks: [] };
}

/** From the rim of the outermost band to the inner edge of the innermost one. Place from 0. */
function wedgeOutline(pieces: readonly Piece[], place: number): Outline {
  const bands = pieces.filter((piece) => piece.part === 'band' && piece.place === place + 1);
  const inward = bands.toSorted((one, other) => (one.band ?? 0) - (other.band ?? 0));
  return [...(inward[0]?.outline.slice(0, 2) ?? []), ...(inward.at(-1)?.outline.slice(2) ?? [])];
}

/** Words on where they are: blocks by number, those that wait on the side table apart. */
export function whereWords(project: Project, set: StripSetId, tip: Tip): Phrase {
  const hangs = new Set(project.wall.cells.flatMap((cell) => cell?.block ?? []));
  const uses = wedgeUses(project)(set, tip);
  const numbers = (hung: boolean) => [
    ...new Set(uses.filter(({ block }) => hangs.has(block) === hung).map(({ number }) => number)),
  ];
  const [onWall, waiting] = [numbers(true), numbers(false)];
  if (uses.length === 0) return phrase('In no block: all are left.');
  const words: Phrase[] = [];
  if (onWall.length > 0)
    words.push(counted(onWall.length, 'In block {list}.', 'In blocks {list}.', { list: { list: onWall } }));
  if (waiting.length > 0)
    words.push(
      counted(waiting.length, 'On the side table: block {list}.', 'On the side table: blocks {list}.', {
        list: { list: waiting },
      }),
    );
  return words.reduce((one, other) => phrase('{one} {other}', { one, other }));
}
