// How a wall stands in words: its clashes and its score, alone or beside what they would be.
import { inPoints, type Terms, weighted } from '../../../balance/score/weights';
import type { Standing } from '../../../balance/standing';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import { figureOf } from '../../../model/words/figure';
import { scorePair } from '../../steps/wall/scoreWords';

/** '42 clashes' and 'score 55'; with what would be after it, '42 → 40 clashes' and 'score 55 → 53'. */
export function standingWords(
  now: Standing,
  after: Standing | null,
  weights: Terms,
): readonly [clashes: Phrase, score: Phrase] {
  const scored = inPoints(weighted(now.terms, weights), weights);
  if (after === null)
    return [
      now.clashes === 0 ? phrase('No clashes') : counted(now.clashes, '{count} clash', '{count} clashes'),
      phrase('score {score}', { score: figureOf(scored, 0) }),
    ];
  const score = scorePair(weighted(now.terms, weights), weighted(after.terms, weights), weights);
  return [
    counted(after.clashes, '{before} → {count} clash', '{before} → {count} clashes', { before: now.clashes }),
    phrase('score {before} → {after}', { before: score.before, after: score.after }),
  ];
}

/** The same read out: what a change would do. */
export function wouldWords(now: Standing, after: Standing, weights: Terms): Phrase {
  const score = scorePair(weighted(now.terms, weights), weighted(after.terms, weights), weights);
  return counted(
    after.clashes,
    '{count} clash instead of {before}, score {score} instead of {was}',
    '{count} clashes instead of {before}, score {score} instead of {was}',
    { before: now.clashes, score: score.after, was: score.before },
  );
}
