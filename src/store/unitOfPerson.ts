// The unit of the person: kept in this browser beside the projects, at first the usual one of the language. A project says what it was
// drawn in; it is shown in the person's unit (app.ts), and saved as it was drawn.
import { createProject } from '../model/create';
import type { Project } from '../model/project';
import type { LengthUnit } from '../model/units';
import { trying } from './storage/trying';

const KEY = 'wedgewall-unit';

/**
 * Regions whose quilters cut by the inch: the United States and their territories, and Canada, where rulers and patterns are in
 * inches and paper is Letter though fabric is sold by the metre (common practice, no source). Britain mixes too, but its paper is
 * A4 and its fabric sold by the metre, and paper and purchases follow the unit: there it is centimetres at first.
 */
const BY_THE_INCH = ['US', 'PR', 'GU', 'VI', 'AS', 'MP', 'UM', 'CA'];

/** The usual unit of a language as the browser names it (en-US, de); centimetres for what is no language. */
export function usualUnit(language: string): LengthUnit {
  try {
    const { region } = new Intl.Locale(language).maximize();
    return BY_THE_INCH.includes(region ?? '') ? 'in' : 'cm';
  } catch {
    return 'cm';
  }
}

/** Keeps the person's unit in the browser; nothing where it keeps nothing. */
export interface UnitNote {
  read(): LengthUnit | null;
  write(unit: LengthUnit): void;
}

export function createUnitNote(area: () => Storage): UnitNote {
  return {
    read: () => {
      const kept = trying(() => area().getItem(KEY));
      return kept === 'in' || kept === 'cm' ? kept : null;
    },
    // Where it cannot be written, the unit holds until the page is closed.
    write: (unit) => trying(() => area().setItem(KEY, unit)),
  };
}

/** Calls back when another tab has chosen a unit. */
export function watchUnit(view: Pick<Window, 'addEventListener'>, chosen: (unit: LengthUnit) => void): void {
  view.addEventListener('storage', (event) => {
    const { key, newValue } = event as StorageEvent;
    if (key === KEY && (newValue === 'in' || newValue === 'cm')) chosen(newValue);
  });
}

/** Each project in the other unit, both ways, so that one that is shown and its document are told apart from no other. */
const OTHER = new WeakMap<Project, Project>();

/** The project with its lengths shown in this unit, always the same object for the same project. No length changes. */
export function inUnit(project: Project, unit: LengthUnit): Project {
  if (project.preferences.unit === unit) return project;
  const known = OTHER.get(project);
  if (known) return known;
  const other = { ...project, preferences: { ...project.preferences, unit } };
  OTHER.set(project, other);
  OTHER.set(other, project);
  return other;
}

/** The project begun anew with the usual sizes of the unit, where nothing in it differs from a new one; else null. */
export function begunAnew(project: Project, unit: LengthUnit): Project | null {
  const { id, name } = project;
  const fresh = createProject(id, name, project.preferences.unit);
  return isSame(project, fresh) ? createProject(id, name, unit) : null;
}

/** Whether two plain values hold the same, in whatever order their keys stand. */
function isSame(one: unknown, other: unknown): boolean {
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) {
    return Object.is(one, other);
  }
  const [keys, others] = [Object.keys(one), Object.keys(other)];
  const at = (from: object, key: string) => (from as Record<string, unknown>)[key];
  return keys.length === others.length && keys.every((key) => isSame(at(one, key), at(other, key)));
}
