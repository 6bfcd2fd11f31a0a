// Projects made for the drawing tests: random strip sets for a seed, and blocks that use them.
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { createProject } from '../../src/model/create';
import type { Block, Fabric, Project, StripSet } from '../../src/model/project';

function fabric(id: string, colour: string): Fabric {
  return { id, name: `Cloth ${id}`, colour, cloth: { kind: 'plain' }, background: false };
}

/** A project of N-wedge blocks from two or three random sets; `rows` × `columns` hang, all turns occur. */
export function randomProject(seed: number, perBlock: 6 | 8 | 10 | 12, rows = 1, columns = 1): Project {
  const random = xoroshiro128plus(seed);
  const pick = (least: number, most: number) => uniformInt(random, least, most);
  const project = createProject('p', 'Sample');
  const fabrics = [...project.fabrics, ...['a', 'b', 'c', 'd', 'e'].map((id) => fabric(id, '#446688'))];
  const stripSets = Array.from({ length: pick(2, 3) }, (_, index): StripSet => {
    const strips: StripSet['strips'] = [];
    let height = 0.5;
    while (height < 7.5) {
      const width = 0.6 + pick(0, 40) / 16;
      strips.push({ fabric: 'abcde'[pick(0, 4)]!, width });
      height += width - 0.5;
    }
    return {
      id: `s${index}`,
      label: `${index}`,
      strips,
      length: 400,
      pressing: 'last',
      firstTip: 'up',
      progress: 'planned',
      cut: null,
      locked: false,
    };
  });
  const steps = perBlock % 4 === 0 ? perBlock / 4 : perBlock / 2;
  const blocks = Array.from({ length: rows * columns }, (_, index): Block => {
    return {
      id: `b${index}`,
      kind: 'pieced',
      number: index + 1,
      places: Array.from({ length: perBlock }, (__, place) => ({
        set: `s${pick(0, stripSets.length - 1)}`,
        tip: place % 2 === 0 ? 'up' : 'down',
      })),
      cornerFabric: null,
      cornerShift: pick(0, steps - 1),
      progress: 'planned',
    };
  });
  const cells = blocks.map((block, index) => ({
    block: block.id,
    turn: index % (perBlock % 4 === 0 ? 4 : 2),
    pinned: false,
  }));
  return {
    ...project,
    fabrics,
    stripSets,
    blocks,
    wedge: { ...project.wedge, perBlock },
    wall: { rows, columns, cells },
  };
}
