// Lays out the pages of the pattern to be looked at, anew when the quilt or the choices change; the last ones stay until then.
import { useEffect, useState } from 'react';
import type { PatternOptions } from '../../../drawing/pattern/options';
import type { PageShapes } from '../../../drawing/pattern/pageShapes';
import { phrase } from '../../../model/phrase';
import type { Project } from '../../../model/project';
import type { Problem } from '../../../model/result';
import type { LaidOut } from '../../../store/picture/patternPdf';
import { NUMBERS } from '../../words';

interface Pages {
  readonly pattern: LaidOut | null;
  readonly problems: readonly Problem[];
  /** Whether other pages are on their way. */
  readonly waiting: boolean;
}

interface Page {
  readonly page: PageShapes | null;
  readonly problems: readonly Problem[];
}

interface Laid {
  readonly project: Project;
  readonly options: PatternOptions;
  readonly pattern: LaidOut | null;
  readonly problems: readonly Problem[];
}

export function usePatternPages(project: Project, options: PatternOptions): Pages {
  const [laid, setLaid] = useState<Laid | null>(null);
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

/** What is on a page of a pattern, from 0, and why it could not be had. The page before stays until it is there. */
export function usePage(pattern: LaidOut, number: number): Page {
  const [shown, setShown] = useState<Page>({ page: null, problems: [] });
  useEffect(() => {
    let stale = false;
    const asked = pattern.page(number, () => stale);
    void asked.then((answer) => {
      if (stale || answer === null) return;
      setShown(answer.ok ? { page: answer.value, problems: [] } : { page: null, problems: answer.problems });
    });
    return () => {
      stale = true;
    };
  }, [pattern, number]);
  return shown;
}
