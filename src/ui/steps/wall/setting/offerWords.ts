// Words on an offered size, and the quilt with that size.
import type { SizeOffer } from '../../../../cutting/top/sizeOffers';
import { apply } from '../../../../editing/apply';
import { takeOffer } from '../../../../editing/commands/takeOffer';
import { counted, type Phrase, phrase } from '../../../../model/phrase';
import type { Project } from '../../../../model/project';

/** The quilt with the offered size; the present quilt where the offer is refused (taking the offer then says why). */
export function withOffer(project: Project, offer: SizeOffer): Project {
  const outcome = apply(project, takeOffer(offer));
  return outcome.ok ? outcome.project : project;
}

/** The finished size in words. */
export function sizeWords(offer: SizeOffer): Phrase {
  return phrase('{width} × {height}', {
    width: { inches: offer.width },
    height: { inches: offer.height },
  });
}

/** Sashing and borders in words. */
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

/** The number of blocks in words, and how many of them are still to make. */
export function blockWords(offer: SizeOffer, have: number): Phrase {
  const more = offer.blocks - have;
  if (more <= 0)
    return counted(offer.blocks, '1 block; you have {have}', '{count} blocks; you have {have}', { have });
  return counted(
    offer.blocks,
    '1 block, {more} more than you have',
    '{count} blocks, {more} more than you have',
    {
      more,
    },
  );
}
