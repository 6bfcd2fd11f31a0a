// Commands on the buying choices: how cloth is bought and cut, prices, and kits.

import { type Buying, keepSoldBy } from '../../model/buying';
import { type Phrase, phrase } from '../../model/phrase';
import type { FabricId, Project } from '../../model/project';
import type { Command } from '../apply';
import { changeFabric } from './fabrics';

type Plain = Omit<Buying, 'backing' | 'kits'>;

const WORDS: Readonly<Record<keyof Plain, string>> = {
  soldBy: 'change how fabric is sold',
  shrinkage: 'change the shrinkage',
  straighten: 'change the straightening allowance',
  fatQuarters: 'change the use of fat quarters',
  corners: 'change the corner squares',
  longPieces: 'change how long pieces are cut',
  bindingExtra: 'change the spare length of the binding',
  price: 'change the price of fabric',
  fatQuarterPrice: 'change the price of a fat quarter',
  currency: 'change the currency',
};

/** Changes how cloth is bought; the label names the first entry changed. */
export function changeBuying(to: Partial<Plain>): Command {
  const [first] = Object.keys(to) as (keyof Plain)[];
  const label: Phrase = phrase(first ? WORDS[first] : 'change how fabric is bought');
  return {
    label,
    change: (draft) => {
      Object.assign(draft.buying, to);
      keepSoldBy(draft);
    },
  };
}

/** Changes the backing: its fabric, overhang, width of cloth, seam, piecing or price. */
export function changeBacking(to: Partial<Buying['backing']>): Command {
  return {
    label: phrase('change the backing'),
    change: (draft) => {
      Object.assign(draft.buying.backing, to);
      keepSoldBy(draft);
    },
  };
}

/** Changes the number of kits and what they contain. */
export function changeKits(to: Partial<Buying['kits']>): Command {
  return {
    label: phrase('change the kits'),
    change: (draft) => {
      Object.assign(draft.buying.kits, to);
    },
  };
}

/** Changes the price of one fabric; null: it has that of all fabrics. */
export function priceFabric(project: Project, id: FabricId, price: number | null): Command {
  const { label, change } = changeFabric(project, id, { price });
  return {
    label,
    change: (draft) => {
      change?.(draft);
      keepSoldBy(draft);
    },
  };
}
