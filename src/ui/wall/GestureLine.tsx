// One line on what hands can do on the wall, under it and so never over cloth; put away, it stays away in this browser.
import { X } from 'lucide-react';
import { useState } from 'react';
import { dismissHint, isDismissed } from '../../store/dismissed';
import { useApp } from '../app';
import { Hint } from '../fields/Hint';
import { useSay } from '../words';
import { idleWords } from './hands/gestureWords';

const AREA = () => globalThis.localStorage;

export function GestureLine({ carrying }: { carrying: boolean }) {
  const say = useSay();
  const picked = useApp((app) => app.picked !== null);
  const [told, setTold] = useState(() => isDismissed('wall', AREA));
  if (told) return null;
  return (
    <p className="gesture-line">
      <span className="grow">{say(carrying ? CARRYING : picked ? PICKED : idleWords())}</span>
      <Hint words={say('Do not show this line again')} placement="top">
        <button
          type="button"
          className="button bare"
          aria-label={say('Do not show this line again')}
          onClick={() => {
            dismissHint('wall', AREA);
            setTold(true);
          }}
        >
          <X size={16} aria-hidden />
        </button>
      </Hint>
    </p>
  );
}

const PICKED = 'Drag it onto another to swap them, or use its buttons to turn, swap, pin or take it down.';
const CARRYING = 'Let go over a block to swap, over an empty place to hang it. Escape puts it back.';
