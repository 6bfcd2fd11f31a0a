// Makes new parts of a project with the usual figures: an empty project, an empty block, a strip set without strips.
import { usualBuying } from './buying';
import { freshId, freshLetter, freshNumber } from './find';
import { USUAL } from './lengths';
import { type Block, CURRENT_VERSION, type Project, type StripSet } from './project';
import type { LengthUnit } from './units';

/**
 * An empty project: one background fabric, a wall of 3 rows of 2, and the usual sizes of the unit, such as a 7 1/2" or a 20 cm
 * wedge. `id` must be unique among projects.
 */
export function createProject(id: string, name: string, unit: LengthUnit = 'in'): Project {
  const { cutHeight, seam, usableWidth, sashing } = USUAL[unit];
  return {
    format: 'wedgewall-project',
    version: CURRENT_VERSION,
    id,
    name,
    notes: '',
    fabrics: [
      { id: 'f1', name: 'Background', colour: '#efe9dc', cloth: { kind: 'plain' }, background: true },
    ],
    stripsOnHand: [],
    clothOnHand: [],
    stripSets: [],
    wedge: { perBlock: 8, cutHeight, seam, assemblySeam: seam, outerSeam: seam },
    blocks: [],
    wall: { rows: 3, columns: 2, cells: Array.from({ length: 6 }, () => null) },
    setting: {
      layout: { kind: 'straight' },
      plain: null,
      cornerFabric: 'f1',
      cornerRule: null,
      sashing: { where: 'none', width: sashing, fabric: 'f1' },
      borders: [],
      binding: null,
    },
    preferences: {
      unit,
      wallLightness: 62,
      usableWidth,
      seed: 1,
      lookalikes: 10,
      intent: { value: 'scattered', colour: 'scattered' },
    },
    colourways: [],
    buying: usualBuying(unit),
  };
}

/** A block with all its places empty, under the lowest free number. */
export function createBlock(project: Project): Block {
  return {
    id: freshId('b', project.blocks),
    kind: 'pieced',
    number: freshNumber(project),
    places: Array.from({ length: project.wedge.perBlock }, () => null),
    cornerFabric: null,
    cornerShift: 0,
    progress: 'planned',
  };
}

/** A strip set without strips, under the first free letter; its length is the usable width of fabric. */
export function createSet(project: Project): StripSet {
  return {
    id: freshId('s', project.stripSets),
    label: freshLetter(project),
    strips: [],
    length: project.preferences.usableWidth,
    pressing: 'last',
    firstTip: project.stripSets.length % 2 === 0 ? 'up' : 'down',
    progress: 'planned',
    cut: null,
    locked: false,
  };
}
