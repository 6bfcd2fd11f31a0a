// Quilts for rendered pictures: fabrics of the demo quilts, some with their hues turned and their values moved, in sets, blocks and
// walls made at random.
import { formatHex } from '../../../src/colour/parse';
import { encodedOf, linearOfHex, linearOfOklab, oklabOf } from '../../../src/colour/spaces';
import { setHeight } from '../../../src/geometry/stripSet';
import type { Block, Fabric, Project, StripSet } from '../../../src/model/project';
import { demo } from '../../demo';
import type { Dice } from './dice';

const PALETTES = ['plum-orchard', 'keepers-winter', 'harbour-reading-corner', 'river-ferry', 'kiln-shed'];

/** The same colour with its hue turned, in radians, and its chroma and lightness scaled. */
function recoloured(hex: string, turn: number, chroma: number, light: number): string {
  const [l, a, b] = oklabOf(linearOfHex(hex));
  const [cos, sin] = [Math.cos(turn) * chroma, Math.sin(turn) * chroma];
  const moved = linearOfOklab([0.97 - (0.97 - l) * light, a * cos - b * sin, a * sin + b * cos]);
  return formatHex(encodedOf(moved));
}

function fabricsOf(project: Project, dice: Dice): Fabric[] {
  const [turn, chroma, light] = dice.chance(0.4)
    ? [0, 1, 1]
    : [dice.between(0, 6.28), dice.between(0.6, 1.2), dice.between(0.85, 1.05)];
  const again = (hex: string) => (turn === 0 ? hex : recoloured(hex, turn!, chroma!, light!));
  const plain = dice.between(0, 0.5);
  return project.fabrics.map((fabric) => ({
    ...fabric,
    colour: again(fabric.colour),
    cloth:
      fabric.cloth.kind !== 'print' || dice.chance(plain)
        ? { kind: 'plain' as const }
        : {
            kind: 'print' as const,
            print: { ...fabric.cloth.print, inks: fabric.cloth.print.inks.map(again) },
          },
  }));
}

function randomSets(fabrics: readonly Fabric[], seam: number, cutHeight: number, dice: Dice): StripSet[] {
  const inner = fabrics.filter((fabric) => !fabric.background);
  return Array.from({ length: 4 + dice.below(5) }, (_, at) => {
    const strips: { fabric: string; width: number }[] = [];
    while (setHeight(strips, seam) < cutHeight) {
      const fabric = dice.pick(inner).id;
      if (fabric !== strips.at(-1)?.fabric) strips.push({ fabric, width: 1.25 + dice.below(8) * 0.25 });
    }
    const label = String.fromCharCode(65 + at);
    return {
      id: `set${label}`,
      label,
      strips,
      length: 2000,
      pressing: 'first',
      firstTip: 'up',
      progress: 'cut',
      cut: null,
      locked: false,
    };
  });
}

/** A quilt with a full wall of this size. `perBlock` wedges to the block; blocks numbered from 1 by rows. */
export function randomQuilt(
  dice: Dice,
  rows: number,
  columns: number,
  perBlock: 6 | 8 | 10 | 12 = 8,
): Project {
  const base = demo(dice.pick(PALETTES));
  const fabrics = fabricsOf(base, dice);
  const wedge = { ...base.wedge, perBlock, cutHeight: dice.pick([6.5, 7.5, 8.5, 9.5]) };
  const stripSets = randomSets(fabrics, wedge.seam, wedge.cutHeight, dice);
  const cornerShifts = perBlock === 6 ? 3 : perBlock === 8 ? 2 : perBlock === 10 ? 5 : 3;
  const blocks = Array.from(
    { length: rows * columns },
    (_, at): Block => ({
      id: `b${at + 1}`,
      kind: 'pieced',
      number: at + 1,
      places: Array.from({ length: perBlock }, () => ({
        set: dice.pick(stripSets).id,
        tip: dice.pick(['up', 'down'] as const),
      })),
      cornerFabric: null,
      cornerShift: dice.below(cornerShifts),
      progress: 'squared',
    }),
  );
  const turns = perBlock % 4 === 0 ? 4 : 2;
  return {
    ...base,
    fabrics,
    wedge,
    stripSets,
    blocks,
    colourways: [],
    clothOnHand: [],
    stripsOnHand: [],
    wall: {
      rows,
      columns,
      cells: blocks.map((block) => ({ block: block.id, turn: dice.below(turns), pinned: false })),
    },
    setting: {
      ...base.setting,
      layout: { kind: 'straight' },
      plain: null,
      cornerRule: null,
      borders: [],
      sashing: { ...base.setting.sashing, where: 'none' },
    },
  };
}
