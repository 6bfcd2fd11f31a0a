// An offered size in words, and the quilt as it would be.
import type { SizeOffer } from '../../../../cutting/top/sizeOffers';
import { apply } from '../../../../editing/apply';
import { takeOffer } from '../../../../editing/commands/takeOffer';
import { type Phrase, phrase } from '../../../../model/phrase';
import type { Project } from '../../../../model/project';

/** The quilt as the offer would make it; as it is where that is refused, which taking it up then explains. */
export function withOffer(project: Project, offer: SizeOffer): Project {
  const outcome = apply(project, takeOffer(offer));
  return outcome.ok ? outcome.project : project;
}

/** Finished size. */
export function sizeWords(offer: SizeOffer): Phrase {
  return phrase('{width} × {height}', {
    width: { inches: offer.width },
    height: { inches: offer.height },
  });
}

/** Rows and columns. */
export function rowWords(offer: SizeOffer): Phrase {
  return phrase('{rows} rows of {columns}', { rows: offer.rows, columns: offer.columns });
}

/** Sashing and borders. */
export function frameWords({ sashing, borders }: SizeOffer): Phrase {
  const sashed = sashing.where === 'none' ? null : { width: { inches: sashing.width } };
  const bordered = borders.length === 0 ? null : { inches: borders.reduce((sum, one) => sum + one, 0) };
  if (sashed && bordered) {
    return phrase(
      sashing.where === 'around'
        ? 'sashing {width} all round, borders {border}'
        : 'sashing {width} between, borders {border}',
      { ...sashed, border: bordered },
    );
  }
  if (sashed) {
    return phrase(
      sashing.where === 'around' ? 'sashing {width} all round' : 'sashing {width} between',
      sashed,
    );
  }
  return bordered
    ? phrase('no sashing, borders {border}', { border: bordered })
    : phrase('no sashing, no border');
}

/** Blocks, and how many of them are still to make. */
export function blockWords(offer: SizeOffer, have: number): Phrase {
  const more = offer.blocks - have;
  if (more <= 0) return phrase('{blocks} blocks; you have {have}', { blocks: offer.blocks, have });
  return phrase('{blocks} blocks, {more} more than you have', { blocks: offer.blocks, more });
}
