// Keeps the step, what is folded away, the part of finishing, the list of moves by hand and the half-filled forms over a reload of the
// tab (in sessionStorage, so for this tab alone). They are no part of the project.
import * as v from 'valibot';
import { BLOCK_PROGRESS, clothOnHandSchema, fabricSchema, projectSchema } from '../model/project';
import { type AppStore, STEPS } from './app';
import { type DraftOf, type Drafts, WAYS_TO_BEGIN } from './drafts';
import { FINISHING_PARTS } from './finishing';
import { trying } from './storage/trying';
import { PLACE_KEY } from './storage/windowKeys';

const chosenLater = v.nullable(fabricSchema.entries.id);
const draftOf = <Entries extends v.ObjectEntries>(entries: Entries) =>
  v.exactOptional(v.object({ open: v.boolean(), values: v.object(entries) }));

const inches = clothOnHandSchema.entries.depth;
const { count } = clothOnHandSchema.entries;
const beginningEntries = {
  way: v.nullable(v.picklist(WAYS_TO_BEGIN)),
  aside: v.nullable(v.picklist(['fabrics', 'blocks'])),
  fabrics: count,
  strips: v.array(v.object({ width: inches, count })),
  length: inches,
  cloth: v.omit(clothOnHandSchema, ['id', 'fabric']),
  size: v.object({ width: inches, height: inches }),
  roll: v.object({ strips: count, width: inches, fabrics: count }),
};

const place = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(11));
const tip = v.picklist(['up', 'down']);
const wedge = v.object({ set: v.string(), tip });
const entrySchema = v.object({
  places: v.pipe(v.array(v.nullable(wedge)), v.maxLength(12)),
  at: v.nullable(place),
  order: v.array(place),
  pending: v.string(),
  stated: v.nullable(tip),
  fresh: v.boolean(),
  first: tip,
});

const spot = v.union([v.number(), v.literal('side table')]);
const turn = v.number();
const { wall } = projectSchema.entries;
const movesSchema = v.object({
  from: wall,
  to: wall,
  steps: v.array(
    v.object({
      kind: v.picklist(['turn', 'swap', 'round', 'row']),
      carries: v.array(v.object({ block: v.string(), from: spot, to: spot, turn, turned: turn })),
    }),
  ),
  ticked: v.array(v.number()),
});

const placeSchema = v.object({
  project: v.string(),
  step: v.picklist(STEPS),
  part: v.exactOptional(v.picklist(FINISHING_PARTS)),
  folded: v.exactOptional(v.array(v.picklist(STEPS))),
  moves: v.exactOptional(v.nullable(movesSchema)),
  movesOpen: v.exactOptional(v.boolean()),
  drafts: v.object({
    beginning: v.exactOptional(
      v.object({ open: v.boolean(), values: v.partial(v.object(beginningEntries)) }),
    ),
    fabric: draftOf(v.omit(fabricSchema, ['id']).entries),
    cloth: draftOf({ ...v.omit(clothOnHandSchema, ['id']).entries, fabric: chosenLater }),
    entering: draftOf({
      entry: v.nullable(entrySchema),
      progress: v.picklist(BLOCK_PROGRESS),
      counts: v.array(v.object({ ...wedge.entries, count: v.number() })),
      text: v.string(),
      standing: v.object({ sets: count, strips: count, fabrics: count }),
    }),
  }),
});

/**
 * Restores the step, folds and forms noted for this tab, if the same project is open, and notes them again when the page goes away.
 * Ignores a note that cannot be read and a browser that keeps none.
 */
export function keepPlace(app: AppStore, area: () => Storage, view: Pick<Window, 'addEventListener'>): void {
  takeUp(app, area);
  view.addEventListener('pagehide', () => {
    const { project, step, laid, folded, drafts } = app.getState();
    const { part, moves, movesOpen } = laid;
    const place = { project: project.id, step, part, moves, movesOpen, folded, drafts };
    trying(() => area().setItem(PLACE_KEY, JSON.stringify(place)));
  });
}

function takeUp(app: AppStore, area: () => Storage): void {
  const place = trying(() => v.safeParse(placeSchema, JSON.parse(area().getItem(PLACE_KEY) ?? 'null')));
  if (!place?.success || place.output.project !== app.getState().project.id) return;
  const { step, part, folded = [], moves = null, movesOpen = false, drafts } = place.output;
  app.getState().goTo(step);
  for (const one of folded) app.getState().fold(one, true);
  if (part) app.getState().lay({ part });
  if (moves) app.getState().lay({ moves, movesOpen });
  for (const form of ['beginning', 'fabric', 'cloth', 'entering'] as const satisfies (keyof Drafts)[]) {
    const draft = drafts[form];
    if (draft) app.getState().keepDraft(form, draft as DraftOf<typeof form>);
  }
}
