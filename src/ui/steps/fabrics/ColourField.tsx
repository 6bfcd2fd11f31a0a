// A colour: picked from the system's own picker or written as #rrggbb. The picker shows live and is taken when it closes.
import { useEffect, useEffectEvent, useId, useRef, useState } from 'react';
import { parseHex } from '../../../colour/parse';
import { phrase } from '../../../model/phrase';
import type { Problem } from '../../../model/result';
import { Complaint } from '../../fields/Complaint';
import { useSay } from '../../words';

interface Props {
  label: string;
  value: string;
  /** While the picker is open; null when it is taken or given up. */
  onLive: (hex: string | null) => void;
  onCommit: (hex: string) => readonly Problem[];
}

export function ColourField({ label, value, onLive, onCommit }: Props) {
  const say = useSay();
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const [picking, setPicking] = useState<string | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const picker = useRef<HTMLInputElement>(null);
  const take = (hex: string) => {
    const refused = hex === value ? [] : onCommit(hex);
    setProblems(refused);
    setPicking(null);
    onLive(null);
    if (refused.length === 0) setTyped(null);
  };
  const taken = useEffectEvent(() => take(picker.current!.value));
  // React's onChange follows every move in the picker; the browser's own change event comes once it is taken.
  useEffect(() => {
    const input = picker.current!;
    const change = () => taken();
    input.addEventListener('change', change);
    return () => input.removeEventListener('change', change);
  }, []);
  const commit = () => {
    if (typed === null) return;
    const hex = hexOf(typed);
    if (hex) return take(hex);
    const message = phrase('Write a colour as # and six figures or letters a to f, such as #b5651d.');
    setProblems([{ code: 'not-a-colour', path: label, message }]);
  };
  return (
    <div className="field fab-colour">
      <label htmlFor={id}>{say(label)}</label>
      <span className="fab-colour-pair">
        <input
          ref={picker}
          type="color"
          aria-label={say('{name}: pick', { name: say(label) })}
          value={picking ?? value}
          onChange={(event) => {
            setPicking(event.target.value);
            onLive(event.target.value);
          }}
        />
        <input
          id={id}
          autoComplete="off"
          spellCheck={false}
          value={typed ?? picking ?? value}
          aria-invalid={problems.length > 0}
          aria-describedby={`${id}-why`}
          onChange={(event) => setTyped(event.target.value)}
          onBlur={commit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit();
            if (event.key === 'Escape' && typed !== null) {
              event.stopPropagation();
              setTyped(null);
              setProblems([]);
            }
          }}
        />
      </span>
      <Complaint problems={problems} id={`${id}-why`} />
    </div>
  );
}

/** #rrggbb from what was typed: the # may be left out, three figures stand for six. Null for anything else. */
function hexOf(text: string): string | null {
  const trimmed = text.trim().toLowerCase();
  const marked = trimmed.startsWith('#') ? trimmed : `#${trimmed}`;
  if (!parseHex(marked)) return null;
  return marked.length === 4 ? marked.replace(/[0-9a-f]/g, '$&$&') : marked;
}
