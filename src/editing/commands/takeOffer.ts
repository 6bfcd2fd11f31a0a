// Changes the top to an offered size: rows, columns, sashing and borders in one command, so that one undo takes it all back.
import type { SizeOffer } from '../../cutting/top/sizeOffers';
import { phrase } from '../../model/phrase';
import type { Border } from '../../model/project';
import type { Command } from '../apply';
import { changeCells } from './layout';

/**
 * The command for an offer. A new border has the sashing's fabric; gaps and border ends with widths of their own get the
 * common width.
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
      draft.setting.borders = offer.borders.map((width, index) => {
        const border: Border = { ...(borders[index] ?? { fabric: sashing.fabric }), width };
        delete border.ends;
        return border;
      });
      changeCells(draft, () => {
        draft.wall.rows = offer.rows;
        draft.wall.columns = offer.columns;
      });
    },
  };
}
