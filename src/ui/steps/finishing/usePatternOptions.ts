// The options of the pattern as they are chosen, for the panel and the pages on the large area.
import { useMemo } from 'react';
import { PATTERN_PARTS, type PatternOptions } from '../../../drawing/pattern/options';
import { useApp } from '../../app';
import { useUnit } from '../../words';

/** The options; the paper is the usual one of the unit until one is chosen. */
export function usePatternOptions(): PatternOptions {
  const chosen = useApp((app) => app.laid.paper);
  const leftOut = useApp((app) => app.laid.leftOut);
  const usual = useUnit() === 'in' ? 'letter' : 'a4';
  return useMemo(
    () => ({ paper: chosen ?? usual, parts: PATTERN_PARTS.filter((part) => !leftOut.includes(part)) }),
    [chosen, usual, leftOut],
  );
}
