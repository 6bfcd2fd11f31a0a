// The line under the bar where work is not saved, or not for good: what is wrong, why, and what to do about it. The most urgent is told alone.
import { FileDown, X } from 'lucide-react';
import { useState } from 'react';
import { dismissHint, isDismissed } from '../../../store/dismissed';
import type { Session } from '../../../store/session';
import { useApp } from '../../app';
import { Complaint } from '../../fields/Complaint';
import { Hint } from '../../fields/Hint';
import { Saved } from '../../fields/Saved';
import { useSession, useSessionState } from '../../session';
import { useSay } from '../../words';
import { BothStates } from './BothStates';
import { type Notice, noticeOf } from './noticeOf';
import { useSaveQuilt } from './useSaveQuilt';
import './notice.css';

const AREA = () => globalThis.localStorage;

export function SavingNotice() {
  const say = useSay();
  const session = useSession();
  const state = useSessionState((now) => now);
  const name = useApp((app) => app.project.name);
  const [hidden, setHidden] = useState<string | null>(null);
  const notice = noticeOf(state, name, (hint) => isDismissed(hint, AREA));
  if (!notice || notice.key === hidden) return null;
  const close = () => {
    setHidden(notice.key);
    if (notice.hint) dismissHint(notice.hint, AREA);
    if (notice.kind === 'told') session.heard();
  };
  return (
    <section className="notice" aria-label={say('Saving')}>
      <p className="notice-words" role="status">
        {notice.words.map((words) => say(words)).join(' ')}
      </p>
      <Actions key={notice.key} notice={notice} session={session} />
      <Hint words={say('Close this line')}>
        <button type="button" className="button bare" aria-label={say('Close this line')} onClick={close}>
          <X size={16} aria-hidden />
        </button>
      </Hint>
    </section>
  );
}

function Actions({ notice, session }: { notice: Notice; session: Session }) {
  const say = useSay();
  const { saveQuilt, saved } = useSaveQuilt();
  const [comparing, setComparing] = useState(false);
  const [problems, setProblems] = useState<Awaited<ReturnType<Session['take']>>>([]);
  return (
    <>
      <div className="row">
        {notice.kind === 'removed' ? (
          <button
            type="button"
            className="button solid"
            onClick={() => void session.saveAgain().then(setProblems)}
          >
            {say('Save it here again')}
          </button>
        ) : null}
        {notice.kind === 'conflict' ? (
          <button
            type="button"
            className="button solid"
            aria-expanded={comparing}
            onClick={() => setComparing(!comparing)}
          >
            {say('Look at both')}
          </button>
        ) : null}
        {notice.kind === 'told' ? null : (
          <button
            type="button"
            className={notice.kind === 'problem' ? 'button solid' : 'button'}
            onClick={saveQuilt}
          >
            <FileDown size={16} aria-hidden /> {say('Save to a file')}
          </button>
        )}
      </div>
      <Saved words={saved} />
      <Complaint problems={problems} />
      {comparing ? <BothStates onTake={(which) => void session.take(which).then(setProblems)} /> : null}
    </>
  );
}
