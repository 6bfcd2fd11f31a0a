// The whole list of cloth: every fabric of the quilt, the backing and the batting.

import { wedgeProblem } from '../../geometry/wedge';
import { picturesInQuilt } from '../../model/colourway';
import { counted, type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import type { Inches } from '../../model/units';
import { isPlain } from '../../model/wallCells';
import { type BattingSize, battingFor } from '../top/batting';
import { growsWithUse } from '../wedges/ledger';
import { type BackingYardage, backingYardage } from './backingYardage';
import { clothOnHand, type FabricYardage, fabricYardage } from './fabricYardage';
import { totalOf } from './money';
import { neededPieces } from './neededPieces';
import type { CuttingScope } from './setStrips';

export interface Yardage {
  /** Fabrics with something to cut, in document order. */
  readonly fabrics: readonly FabricYardage[];
  /** What the backing takes, in the cloth of its fabric or apart; null where no block can be made from the wedge. */
  readonly backing: BackingYardage | null;
  /** Packaged sizes that cover the backing's size, smallest first. */
  readonly batting: readonly BattingSize[];
  /** What the figures leave out. */
  readonly remarks: readonly Phrase[];
}

/** Cloth for the whole quilt, or for what is still to cut. */
export function yardage(project: Project, scope: CuttingScope): Yardage {
  const backing = backingYardage(project, scope);
  const pieces = [...neededPieces(project, scope), ...(backing?.pieces ?? [])];
  const fabrics = project.fabrics
    .map((fabric) => ({ fabric, rows: pieces.filter((piece) => piece.fabric === fabric.id) }))
    .filter(({ rows }) => rows.length > 0)
    .map(({ fabric, rows }) => {
      const stock = fabric === backing?.fabric ? backing.stockLeft : clothOnHand(project, fabric.id);
      return fabricYardage(project, fabric, rows, scope, stock);
    });
  const size = backing?.layout.size;
  return {
    fabrics,
    backing,
    batting: size ? battingFor(size.width, size.height, project.preferences.unit) : [],
    remarks: remarks(project, scope),
  };
}

/** What is bought of several fabrics: lengths off the bolt in inches, and fat quarters. */
export interface ClothSum {
  readonly inches: Inches;
  readonly fatQuarters: number;
}

/** The purchases of these fabrics added up, each rounded as it is sold. No fabrics: nothing. */
export function totalCloth(fabrics: readonly Pick<FabricYardage, 'buy'>[]): ClothSum {
  const buys = fabrics.map((one) => one.buy);
  return {
    inches: buys.reduce((sum, buy) => sum + (buy.kind === 'length' ? buy.inches : 0), 0),
    fatQuarters: buys.reduce((sum, buy) => sum + (buy.kind === 'fatQuarters' ? buy.count : 0), 0),
  };
}

/** Price of everything listed, the backing too: the sum of the lines; null while a price is missing. */
export function totalCost(list: Pick<Yardage, 'fabrics' | 'backing'>): number | null {
  return totalOf([
    ...list.fabrics.map((one) => one.cost),
    ...(list.backing?.apart ? [list.backing.apart.cost] : []),
  ]);
}

function remarks(project: Project, scope: CuttingScope): Phrase[] {
  const problem = wedgeProblem(project.wedge);
  if (problem) return [problem];
  const found: Phrase[] = [];
  const empty = project.wall.cells.filter((cell, index) => cell === null && !isPlain(index, project)).length;
  if (empty > 0) {
    found.push(
      counted(
        empty,
        'One place on the wall is empty; the corners of a block there are not counted.',
        '{count} places on the wall are empty; the corners of blocks there are not counted.',
      ),
    );
  }
  const sewn = picturesInQuilt(project);
  if (sewn > 0) {
    found.push(
      counted(
        sewn,
        '1 block is a picture of a sewn block; its fabric is not counted.',
        '{count} blocks are pictures of sewn blocks; their fabric is not counted.',
      ),
    );
  }
  const known = scope === 'whole' ? project.stripSets.filter(growsWithUse) : [];
  if (known.length > 0) {
    found.push(
      counted(
        known.length,
        'Set {sets} is known by its sewn wedges only: its length is not on record, and its strips are not counted.',
        'Sets {sets} are known by their sewn wedges only: their length is not on record, and their strips are not counted.',
        { sets: { list: known.map((set) => set.label) } },
      ),
    );
  }
  // No progress is told of sashing between rows, borders, binding and backing.
  if (scope === 'left' && project.blocks.some(({ progress }) => progress === 'joined')) {
    found.push(phrase('What is sewn on after “In its row” stays in this list, even once it is cut.'));
  }
  if (project.setting.binding === null) {
    found.push(phrase('No binding is chosen yet, so none is counted.'));
  }
  return found;
}
