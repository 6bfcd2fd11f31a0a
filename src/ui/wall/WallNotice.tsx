// Notices on the wall: that a preview changes nothing yet, and for a moment the last announcement (why a pinned block stays, what
// was undone). Screen readers get the same from the status line.
import { useEffect, useState } from 'react';
import { useApp } from '../app';
import { useSay } from '../words';

const STAYS = 5_000;

export function WallNotice({ turning }: { turning: string | null }) {
  const say = useSay();
  const announced = useApp((app) => app.announced);
  const preview = useApp((app) => app.preview);
  const step = useApp((app) => app.step);
  const [gone, setGone] = useState(announced.count);
  const [at, setAt] = useState({ step, count: announced.count });
  // A notice is about the step it was given at; one that comes with a change of step stays.
  if (at.step !== step) setGone(Math.max(gone, at.count));
  if (at.step !== step || at.count !== announced.count) setAt({ step, count: announced.count });
  useEffect(() => {
    const timer = setTimeout(() => setGone(announced.count), STAYS);
    return () => clearTimeout(timer);
  }, [announced]);
  const words =
    turning ?? (announced.count > gone && announced.words.say !== '' ? say(announced.words) : null);
  // The words are CSS content, so that assistive tools find them only in the status line.
  return (
    <>
      {words === null ? null : <p className="said" aria-hidden data-words={words} />}
      {preview ? <p className="said look" aria-hidden data-words={say('Preview: not applied')} /> : null}
    </>
  );
}
