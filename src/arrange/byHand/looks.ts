// How blocks look on the wall, so that the ones that look alike may stand for each other: which cells show something else in two
// arrangements of the same blocks.
import { wedgeBands } from '../../geometry/bands';
import { orientation, turnsOf } from '../../model/find';
import type { Block, Place, Project, StripSet, StripSetId } from '../../model/project';

/** What a cell without a block shows. */
export const NOTHING = '';

/** The looks of the blocks of one project. */
export class Looks {
  private readonly project: Project;
  private readonly sets: ReadonlyMap<StripSetId, StripSet>;
  private readonly rings = new Map<Block, readonly string[]>();
  private readonly wedges = new Map<string, string>();

  constructor(project: Project) {
    this.project = project;
    this.sets = new Map(project.stripSets.map((set) => [set.id, set]));
  }

  /** What a block shows with this turn. A picture looks like no other block, and never like itself turned. */
  of(block: Block, turn: number): string {
    if (block.kind === 'pictured') return `picture ${block.id} ${turn}`;
    const ring = this.ring(block);
    const { wedge } = this.project;
    const stands = orientation(block, turn, wedge);
    const round = ring.map((_, at) => ring[(at - stands + ring.length) % ring.length]!);
    return `${block.cornerFabric ?? ''} ${round.join('|')}`;
  }

  /** The same for all turns of a block, and for every block that looks like it with some turn. */
  sortOf(block: Block): string {
    return this.turnsOf(block).toSorted()[0]!;
  }

  /** The turn with which a block shows this look: `now` where that does, so that it need not be turned; null where none does. */
  turnFor(block: Block, look: string, now: number): number | null {
    if (this.of(block, now) === look) return now;
    const turn = this.turnsOf(block).indexOf(look);
    return turn < 0 ? null : turn;
  }

  private turnsOf(block: Block): string[] {
    return Array.from({ length: turnsOf(this.project.wedge.perBlock) }, (_, turn) => this.of(block, turn));
  }

  private ring(block: Block): readonly string[] {
    let ring = this.rings.get(block);
    if (!ring) {
      ring = block.places.map((place) => (place ? this.wedge(place) : ''));
      this.rings.set(block, ring);
    }
    return ring;
  }

  /** What shows of a wedge: wedges of two sets may look the same. */
  private wedge(place: Place): string {
    const key = `${place.set} ${place.tip}`;
    let look = this.wedges.get(key);
    if (look === undefined) {
      const strips = this.sets.get(place.set)?.strips ?? [];
      look = wedgeBands(strips, place.tip, this.project.wedge)
        .map(({ fabric, outer }) => `${fabric} ${Math.round(outer * 1e4)}`)
        .join(',');
      this.wedges.set(key, look);
    }
    return look;
  }
}
