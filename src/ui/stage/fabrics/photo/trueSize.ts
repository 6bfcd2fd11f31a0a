// The true size of a photograph from its ruler: two points and the distance between them.

import type { Problem } from '../../../../model/result';
import { perInchBetween } from '../../../../photo/fabric/trueSize';
import { type PhotoAtWork, patchInHand } from '../../../../store/photo/patches';

type Ruler = NonNullable<PhotoAtWork['ruler']>;

/** The ruler as it is laid, or where it lies at first: along the lower side of the frame in hand. */
export function rulerOf(photo: PhotoAtWork): Ruler {
  if (photo.ruler) return photo.ruler;
  const { width, height } = photo.opened;
  const frame = patchInHand(photo)?.frame ?? { x: width / 2, y: height / 2, width: width / 3, height: 0 };
  const y = Math.min(height, frame.y + frame.height / 2);
  return {
    one: { x: frame.x - frame.width / 2, y },
    other: { x: frame.x + frame.width / 2, y },
    apart: null,
  };
}

/** A photograph's ruler changed, with the true size that follows where its length is known and makes sense. */
export function withRuler(ruler: Ruler): Partial<PhotoAtWork> {
  const { one, other, apart } = ruler;
  const perInch = apart === null ? null : perInchBetween(one, other, apart);
  return perInch?.ok ? { ruler, perInch: perInch.value } : { ruler };
}

/** Why a ruler gives no true size; empty where it does, or has no length yet. */
export function rulerProblems({ one, other, apart }: Ruler): readonly Problem[] {
  const perInch = apart === null ? null : perInchBetween(one, other, apart);
  return perInch === null || perInch.ok ? [] : perInch.problems;
}
