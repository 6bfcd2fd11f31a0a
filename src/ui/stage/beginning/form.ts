// What the ways to begin hold, as first filled in.
import { usualWidths } from '../../../cutting/plan/planStrips';
import { USUAL } from '../../../model/lengths';
import type { Project } from '../../../model/project';
import type { BeginningForm } from '../../../store/drafts';
import { useApp, useAppStore } from '../../app';
import { usualSize } from '../../steps/fabrics/onHand/clothWords';

/** Fabrics of a scrappy top (FabricsStep says eight or more); and of a roll, two strips of each (common practice, no source). */
const USUAL_FABRICS = 8;
const ROLL_FABRICS = 20;
/** A roll has up to 40 strips (source: cutting/kits/precutStrips.ts). */
const ROLL_STRIPS = 40;

function firstForm(project: Project): BeginningForm {
  const { unit, usableWidth } = project.preferences;
  return {
    way: null,
    aside: null,
    fabrics: USUAL_FABRICS,
    strips: usualWidths(unit).map(({ width, part }) => ({ width, count: part })),
    length: usableWidth,
    cloth: { kind: 'fat quarter', ...usualSize('fat quarter', project), count: 1 },
    size: USUAL[unit].top,
    roll: { strips: ROLL_STRIPS, width: USUAL[unit].precut.width, fabrics: ROLL_FABRICS },
  };
}

/** The form, and a function that changes a part of it; always taken, so that fields have nothing to complain of. */
export function useBeginningForm(): [BeginningForm, (to: Partial<BeginningForm>) => []] {
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const draft = useApp((app) => app.drafts.beginning);
  const change = (to: Partial<BeginningForm>): [] => {
    const now = store.getState().drafts.beginning?.values;
    store.getState().keepDraft('beginning', { open: true, values: { ...now, ...to } });
    return [];
  };
  return [{ ...firstForm(project), ...draft?.values }, change];
}
