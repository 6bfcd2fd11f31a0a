// The commands that a chain is made of, with what they are given drawn by chance.
import type { Command } from '../src/editing/apply';
import { addBlocks, removeBlock, setBlockProgress, setCornerFabric } from '../src/editing/commands/blocks';
import { changeBuying } from '../src/editing/commands/buying';
import { fillEmpty } from '../src/editing/commands/chooseWedges';
import { addCloth } from '../src/editing/commands/clothOnHand';
import { addColourway, wearColourway } from '../src/editing/commands/colourways';
import { addSpacer, pieceBorder, setBinding, setCornerstones } from '../src/editing/commands/edges';
import { addFabric, removeFabric, replaceFabric } from '../src/editing/commands/fabrics';
import { layPlain, setLayout } from '../src/editing/commands/layout';
import { markSets } from '../src/editing/commands/setProgress';
import { changeHeightEmptying, changeWedgesEmptying } from '../src/editing/commands/sets/wedgesPerBlock';
import { addBorder, changeSashing, removeBorder, renameProject } from '../src/editing/commands/setting';
import { addSet, changeSet, changeWedge, layStrips, removeSet } from '../src/editing/commands/stripSets';
import { writeDownStrips } from '../src/editing/commands/stripsOnHand';
import { pinBlocks, rearrange, resizeWall } from '../src/editing/commands/wall';
import { phrase } from '../src/model/phrase';
import { type Project, WEDGE_COUNTS } from '../src/model/project';
import { anyMoves } from '../tests/editing/randomMoves';
import { type Chance, one } from './mutate';

type Make = (project: Project, chance: Chance) => Command;

/** Commands on any quilt, given what a field takes. */
const COMMANDS: readonly Make[] = [
  (project, chance) => rearrange(anyMoves(project, chance.below(1e6), 1 + chance.below(3)), phrase('move blocks')),
  (project, chance) => rearrange(anyMoves(project, chance.below(1e6), 1 + chance.below(3)), phrase('move blocks')),
  (_, chance) => addBlocks(1 + chance.below(3)),
  (project, chance) => removeBlock(project, one(project.blocks, chance).id),
  (project, chance) => setBlockProgress([one(project.blocks, chance).id], one(['planned', 'octagon', 'squared', 'joined'], chance)),
  (project, chance) => setCornerFabric(project, one(project.blocks, chance).id, chance.below(3) === 0 ? null : fabric(project, chance)),
  (project, chance) => pinBlocks(project, [one(project.blocks, chance).id], chance.below(2) === 0),
  (_, chance) => resizeWall(1 + chance.below(12), 1 + chance.below(12)),
  (_, chance) => setLayout(one(['straight', 'onPoint'], chance)),
  (project, chance) => layPlain(chance.below(2) === 0 ? null : { fabric: fabric(project, chance), cells: one(['first', 'second'], chance) }),
  (project, chance) => changeSashing({ where: one(['none', 'between', 'around'], chance), width: length(chance, 0.25, 6), fabric: fabric(project, chance) }),
  (project, chance) => setCornerstones(chance.below(2) === 0 ? null : fabric(project, chance)),
  (project, chance) => addBorder({ width: length(chance, 0.25, 12), fabric: fabric(project, chance) }),
  (project, chance) => setBinding({ fabric: fabric(project, chance), cutWidth: length(chance, 1, 6) }),
  (_, chance) => renameProject(one(['', 'A quilt', '🧵🧵', '=1+1', 'x'.repeat(120)], chance)),
  (_, chance) => addFabric({ name: one(['Plum', '', '  '], chance), colour: '#7a3b52', cloth: { kind: 'plain' }, background: chance.below(2) === 0 }),
  (project, chance) => removeFabric(project, fabric(project, chance)),
  (project, chance) => replaceFabric(project, fabric(project, chance), fabric(project, chance)),
  (project, chance) => addSet([{ fabric: fabric(project, chance), width: length(chance, 0.25, 4) }]),
  (project, chance) => removeSet(project, one(project.stripSets, chance).id),
  (project, chance) => changeSet(project, one(project.stripSets, chance).id, { length: length(chance, 0, 200), firstTip: one(['up', 'down'], chance) }),
  (project, chance) => {
    const { id, strips } = one(project.stripSets, chance);
    return layStrips(project, id, [...strips.slice(chance.below(strips.length + 1)), { fabric: fabric(project, chance), width: length(chance, 0.25, 6) }]);
  },
  (project, chance) => markSets([one(project.stripSets, chance).id], one(['planned', 'sewn', 'cut'], chance)),
  (_, chance) => changeWedge({ cutHeight: length(chance, 1, 20), seam: one([0.25, 0.125, 0.375], chance) }),
  (_, chance) => changeWedgesEmptying(one(WEDGE_COUNTS, chance)),
  (_, chance) => changeHeightEmptying(length(chance, 1, 20)),
  (project, chance) => fillEmpty(project, chance.below(1000)).command,
  (project, chance) => writeDownStrips([{ fabric: fabric(project, chance), width: length(chance, 0.25, 6), length: length(chance, 1, 100), count: chance.below(50) }]),
  (project, chance) => addCloth(project, { fabric: fabric(project, chance), kind: 'yardage', stripLength: length(chance, 1, 60), depth: length(chance, 0.25, 200), count: 1 + chance.below(5) }),
  (project, chance) => addColourway('Night', [{ fabric: fabric(project, chance), by: fabric(project, chance) }]),
  (_, chance) => changeBuying({ bindingExtra: length(chance, 0, 60) }),
]; // biome-ignore format: a table

const WITH_BORDERS: readonly Make[] = [
  (project, chance) => removeBorder(border(project, chance)),
  (project, chance) => addSpacer(border(project, chance), fabric(project, chance), length(chance, 0.25, 3), length(chance, 0.25, 3)),
  (project, chance) => pieceBorder(border(project, chance), [{ fabric: fabric(project, chance), width: length(chance, 0.25, 4) }]),
]; // biome-ignore format: a table

const WITH_COLOURWAYS: readonly Make[] = [
  (project, chance) => wearColourway(project, one(project.colourways, chance).id),
];

/** Commands that the quilt has something for. */
export function commandsFor({ setting, colourways }: Project): readonly Make[] {
  return [
    ...COMMANDS,
    ...(setting.borders.length > 0 ? WITH_BORDERS : []),
    ...(colourways.length > 0 ? WITH_COLOURWAYS : []),
  ];
}

/** A border of a quilt that has one. */
function border(project: Project, chance: Chance): number {
  return chance.below(project.setting.borders.length);
}

function fabric(project: Project, chance: Chance): string {
  return one(project.fabrics, chance).id;
}

/** A length of at least `least` inches in eighths, now and then to the last place. */
function length(chance: Chance, least: number, most: number): number {
  const exact = least + chance.part() * (most - least);
  return chance.below(4) === 0 ? exact : Math.max(least, Math.round(exact * 8) / 8);
}
