// Lays out the pages of the pattern to be looked at, anew when the quilt or the choices change; the last ones stay until then.
import { useEffect, useState } from 'react';
import type { PatternOptions } from '../../../drawing/pattern/options';
import type { Pattern } from '../../../drawing/pattern/page';
import { phrase } from '../../../model/phrase';
import type { Project } from '../../../model/project';
import type { Problem } from '../../../model/result';
import { NUMBERS } from '../../words';

interface Pages {
  readonly pattern: Pattern | null;
  readonly problems: readonly Problem[];
  /** Whether other pages are on their way. */
  readonly waiting: boolean;
}

interface LaidOut {
  readonly project: Project;
  readonly options: PatternOptions;
  readonly pattern: Pattern | null;
  readonly problems: readonly Problem[];
}

export function usePatternPages(project: Project, options: PatternOptions): Pages {
  const [laid, setLaid] = useState<LaidOut | null>(null);
  useEffect(() => {
    let stale = false;
    const { unit } = project.preferences;
    void import('../../../store/picture/patternPdf')
      .then(({ layOutPattern }) => layOutPattern(project, options, { unit, numbers: NUMBERS }, () => stale))
      .catch(() => {
        const say = 'The pages could not be loaded. Check the connection, or reload the page.';
        return {
          ok: false as const,
          problems: [{ code: 'not-loaded', path: 'pattern', message: phrase(say) }],
        };
      })
      .then((made) => {
        if (stale || made === null) return;
        setLaid({
          project,
          options,
          pattern: made.ok ? made.value : null,
          problems: made.ok ? [] : made.problems,
        });
      });
    return () => {
      stale = true;
    };
  }, [project, options]);
  return {
    pattern: laid?.pattern ?? null,
    problems: laid?.problems ?? [],
    waiting: laid?.project !== project || laid.options !== options,
  };
}
