// The wedge ledger: what each strip set gives, what the blocks use, what is left. No project may use more than it has.
import { setHeight } from '../../geometry/stripSet';
import { wedgeProblem } from '../../geometry/wedge';
import { counted } from '../../model/phrase';
import type { Project, StripSet } from '../../model/project';
import type { Problem } from '../../model/result';
import { availableWedges, type WedgeCount } from './yield';

export interface LedgerRow {
  readonly set: StripSet;
  readonly height: number;
  readonly available: WedgeCount;
  readonly used: WedgeCount;
  readonly left: WedgeCount;
}

const kept = new WeakMap<
  Project['blocks'],
  { readonly project: Project; readonly rows: readonly LedgerRow[] }
>();

/**
 * One row for each strip set, in order. It does not depend on where blocks hang; the last of each list of blocks is kept, if that is
 * frozen, as all of a quilt on screen is: nobody changes it in place.
 */
export function wedgeLedger(project: Project): readonly LedgerRow[] {
  const { blocks, stripSets, wedge } = project;
  const known = kept.get(blocks);
  if (known?.project.stripSets === stripSets && known.project.wedge === wedge) return known.rows;
  const rows = rowsOf(project);
  if (Object.isFrozen(blocks)) kept.set(blocks, { project, rows });
  return rows;
}

function rowsOf(project: Project): LedgerRow[] {
  const used = usedWedges(project);
  return project.stripSets.map((set) => {
    const available = availableWedges(set, project.wedge);
    const taken = { up: used.get(`${set.id} up`) ?? 0, down: used.get(`${set.id} down`) ?? 0 };
    return {
      set,
      height: setHeight(set.strips, project.wedge.seam),
      available,
      used: taken,
      left: { up: available.up - taken.up, down: available.down - taken.down },
    };
  });
}

function usedWedges(project: Project): Map<string, number> {
  const used = new Map<string, number>();
  for (const block of project.blocks) {
    for (const place of block.places) {
      if (place === null) continue;
      const key = `${place.set} ${place.tip}`;
      used.set(key, (used.get(key) ?? 0) + 1);
    }
  }
  return used;
}

/** Why the project cannot be cut as it stands: an impossible wedge, or more wedges used than there are. */
export function checkWedges(project: Project): Problem[] {
  const impossible = wedgeProblem(project.wedge);
  if (impossible) return [{ code: 'impossible-wedge', path: 'wedge', message: impossible }];
  return wedgeLedger(project).flatMap((row, index) =>
    (['up', 'down'] as const).flatMap((tip) => {
      if (row.left[tip] >= 0) return [];
      const there = row.available[tip];
      const values = { set: row.set.label, there, used: row.used[tip] };
      const say =
        tip === 'up'
          ? counted(
              there,
              'Set {set} gives 1 wedge tip up, but the blocks use {used}.',
              'Set {set} gives {there} wedges tip up, but the blocks use {used}.',
              values,
            )
          : counted(
              there,
              'Set {set} gives 1 wedge tip down, but the blocks use {used}.',
              'Set {set} gives {there} wedges tip down, but the blocks use {used}.',
              values,
            );
      return [{ code: 'too-many-wedges', path: `stripSets[${index}]`, message: say }];
    }),
  );
}

/** Whether nothing is known of a set but its sewn wedges, so that every wedge entered shows that it gave one more. */
export function growsWithUse({ progress, length }: StripSet): boolean {
  return progress === 'cut' && length === 0;
}
