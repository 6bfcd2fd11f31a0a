// Words on the wall itself: that what is shown is only a look, and for a moment what was just said (why a pinned block
// stays, what was undone). Screen readers hear the same from the status line.
import { useEffect, useState } from 'react';
import { useApp } from '../app';
import { useSay } from '../words';

const STAYS = 5_000;

export function WallNotice({ turning }: { turning: string | null }) {
  const say = useSay();
  const said = useApp((app) => app.announced);
  const preview = useApp((app) => app.preview);
  const [gone, setGone] = useState(said.count);
  useEffect(() => {
    const timer = setTimeout(() => setGone(said.count), STAYS);
    return () => clearTimeout(timer);
  }, [said]);
  const words = turning ?? (said.count > gone && said.words.say !== '' ? say(said.words) : null);
  // The words come through CSS: for assistive tools they stand once, in the status line.
  return (
    <>
      {words === null ? null : <p className="said" aria-hidden data-words={words} />}
      {preview ? (
        <p className="said look" aria-hidden data-words={say('Only a look: nothing is changed yet')} />
      ) : null}
    </>
  );
}
