// Changes the top to an offered size: rows, columns, sashing and borders in one command, so that one undo takes it all back.
import { current } from 'immer';
import { borderFabric } from '../../cloth/borderFabric';
import type { SizeOffer } from '../../cutting/top/sizeOffers';
import { phrase } from '../../model/phrase';
import type { Command } from '../apply';
import { changeCells } from './layout';

/**
 * The command for an offer. A new border is of a fabric that is told apart from what it lies against; gaps and border ends with
 * widths of their own get the common width.
 */
export function takeOffer(offer: SizeOffer): Command {
  return {
    label: phrase('make the top {width} × {height}', {
      width: { inches: offer.width },
      height: { inches: offer.height },
    }),
    change: (draft) => {
      const { sashing } = draft.setting;
      sashing.where = offer.sashing.where;
      if (offer.sashing.where !== 'none') sashing.width = offer.sashing.width;
      delete sashing.columnGaps;
      delete sashing.rowGaps;
      const { borders } = draft.setting;
      draft.setting.borders = borders.slice(0, offer.borders.length);
      draft.setting.borders.forEach((border, index) => {
        border.width = offer.borders[index]!;
        delete border.ends;
      });
      changeCells(draft, () => {
        draft.wall.rows = offer.rows;
        draft.wall.columns = offer.columns;
      });
      for (const width of offer.borders.slice(borders.length)) {
        draft.setting.borders.push({ fabric: borderFabric(current(draft)), width });
      }
    },
  };
}
