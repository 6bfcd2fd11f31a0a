// Has the sets of the strips on hand made as they are, beside the page, anew whenever what they are made from changes.
import { useEffect, useMemo, useState } from 'react';
import { makingAsTheyAre } from '../../../../cutting/plan/asTheyAre';
import type { MadeSets, SetMaking } from '../../../../cutting/sets/randomSets';
import type { Problem } from '../../../../model/result';
import { startMaking } from '../../../../store/sets/makingSets';
import { useApp } from '../../../app';

export interface AsTheyAreAnswer {
  /** True while the sets are made. */
  readonly waiting: boolean;
  /** Null while they are made, where that failed, and where no strip is free. */
  readonly made: MadeSets | null;
  readonly problems: readonly Problem[];
}

interface Answer extends Omit<AsTheyAreAnswer, 'waiting'> {
  readonly of: SetMaking;
}

export function useAsTheyAre(): AsTheyAreAnswer {
  const { fabrics, preferences, wedge, stripSets, stripsOnHand } = useApp((app) => app.project);
  const { lookalikes, seed, unit } = preferences;
  const making = useMemo(
    () =>
      makingAsTheyAre({ fabrics, wedge, stripSets, stripsOnHand, preferences: { lookalikes, seed, unit } }),
    [fabrics, wedge, stripSets, stripsOnHand, lookalikes, seed, unit],
  );
  const [answer, setAnswer] = useState<Answer | null>(null);
  useEffect(() => {
    if (!making) return;
    const running = startMaking(making);
    void running.answer.then((came) => {
      if (came === null) return;
      setAnswer({ of: making, made: came.ok ? came.value : null, problems: came.ok ? [] : came.problems });
    });
    return running.cancel;
  }, [making]);
  if (answer && answer.of === making) return { ...answer, waiting: false };
  return { waiting: making !== null, made: null, problems: [] };
}
