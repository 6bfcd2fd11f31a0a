// The pages of the pattern as they will print, one at a time, to be turned by button, key or list. A page is drawn when it is shown.
import { ChevronLeft, ChevronRight, ZoomIn } from 'lucide-react';
import { type KeyboardEvent, useDeferredValue, useState } from 'react';
import type { LaidOut } from '../../../store/picture/patternPdf';
import { useApp, useAppStore } from '../../app';
import { Complaint } from '../../fields/Complaint';
import { Hint } from '../../fields/Hint';
import { isKey } from '../../keys';
import { usePatternOptions } from '../../steps/finishing/usePatternOptions';
import { useSay } from '../../words';
import { PageSheet } from './PageSheet';
import { usePage, usePatternPages } from './usePatternPages';

export function PatternStage() {
  const say = useSay();
  const project = useDeferredValue(useApp((app) => app.project));
  const options = usePatternOptions();
  const { pattern, problems, waiting } = usePatternPages(project, options);
  return (
    <div className="fills pattern-pages" aria-busy={waiting}>
      {pattern ? <Pages pattern={pattern} waiting={waiting} /> : null}
      {pattern === null && problems.length === 0 ? (
        <p className="stage-note" role="status">
          {say('Laying out the pages …')}
        </p>
      ) : null}
      {problems.length > 0 ? (
        <div className="stage-card">
          <Complaint problems={problems} />
        </div>
      ) : null}
    </div>
  );
}

function Pages({ pattern, waiting }: { pattern: LaidOut; waiting: boolean }) {
  const say = useSay();
  const { lay } = useAppStore().getState();
  const asked = useApp((app) => app.laid.page);
  const [near, setNear] = useState(false);
  const last = pattern.pages.length - 1;
  const at = Math.min(asked, last);
  // The page itself is drawn a moment after its number, because one with a picture of a large top takes a while.
  const { page, problems } = usePage(pattern, at);
  const shown = useDeferredValue(page);
  const turnTo = (page: number) => lay({ page: Math.max(0, Math.min(last, page)) });
  const turnByKey = (event: KeyboardEvent) => {
    const to = pageByKey(event, at, last);
    if (to === null) return;
    event.preventDefault();
    turnTo(to);
  };
  return (
    <>
      <div className="page-tools" role="toolbar" aria-label={say('Turn the pages')}>
        <button
          type="button"
          className="button"
          disabled={at === 0}
          aria-label={say('Previous page')}
          onClick={() => turnTo(at - 1)}
        >
          <ChevronLeft size={18} aria-hidden />
          <span className="wide" aria-hidden>
            {say('Back')}
          </span>
        </button>
        <span className="page-number" role="status">
          {waiting ? say('Laying out …') : say('Page {page} of {pages}', { page: at + 1, pages: last + 1 })}
        </span>
        <button
          type="button"
          className="button"
          disabled={at === last}
          aria-label={say('Next page')}
          onClick={() => turnTo(at + 1)}
        >
          <span className="wide" aria-hidden>
            {say('Next')}
          </span>
          <ChevronRight size={18} aria-hidden />
        </button>
        <select
          className="page-list"
          aria-label={say('Go to page')}
          value={at}
          onChange={(event) => turnTo(Number(event.target.value))}
        >
          {pattern.pages.map((page, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a page is its number
            <option key={index} value={index}>
              {say('{page}: {parts}', { page: index + 1, parts: page.parts.join(' · ') })}
            </option>
          ))}
        </select>
        <Hint words={say('Large enough to read')}>
          <button
            type="button"
            className="button"
            aria-pressed={near}
            aria-label={say('Large enough to read')}
            onClick={() => setNear(!near)}
          >
            <ZoomIn size={18} aria-hidden />
            <span className="wide" aria-hidden>
              {say('Large')}
            </span>
          </button>
        </Hint>
      </div>
      {/* biome-ignore lint/a11y/useSemanticElements: a page to scroll and turn by keys is no <fieldset> */}
      <div
        className={near ? 'page-view near' : 'page-view whole'}
        role="group"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and keys turn its pages
        tabIndex={0}
        aria-label={say('Page {page} of {pages}; arrows turn the pages', {
          page: at + 1,
          pages: last + 1,
        })}
        onKeyDown={turnByKey}
      >
        {shown ? <PageSheet page={shown} /> : null}
        {problems.length > 0 ? <Complaint problems={problems} /> : null}
      </div>
    </>
  );
}

/** The page that a key turns to; null for other keys. */
function pageByKey(event: KeyboardEvent, at: number, last: number): number | null {
  if (isKey(event, 'pageOn')) return Math.min(last, at + 1);
  if (isKey(event, 'pageBack')) return Math.max(0, at - 1);
  if (isKey(event, 'pageFirst')) return 0;
  return isKey(event, 'pageLast') ? last : null;
}
