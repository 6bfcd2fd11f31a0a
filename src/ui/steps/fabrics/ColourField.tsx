// A colour: picked from the system's own picker or written as #rrggbb. The picker shows live and is taken when it closes.
import { useEffect, useEffectEvent, useRef, useState } from 'react';
import { parseHex } from '../../../colour/parse';
import { phrase } from '../../../model/phrase';
import type { Problem } from '../../../model/result';
import { TypedField } from '../../fields/TypedField';
import { useTyped } from '../../fields/useTyped';
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
  const [picking, setPicking] = useState<string | null>(null);
  const picker = useRef<HTMLInputElement>(null);
  const typed = useTyped(picking ?? value, (text) => {
    const hex = hexOf(text);
    if (!hex) {
      const message = phrase('Write a colour as # and six figures or letters a to f, such as #b5651d.');
      return [{ code: 'not-a-colour', path: label, message }];
    }
    setPicking(null);
    onLive(null);
    return hex === value ? [] : onCommit(hex);
  });
  const taken = useEffectEvent(() => typed.offer(picker.current!.value));
  // React's onChange follows every move in the picker; the browser's own change event comes once it is taken.
  useEffect(() => {
    const input = picker.current!;
    const change = () => taken();
    input.addEventListener('change', change);
    return () => input.removeEventListener('change', change);
  }, []);
  return (
    <TypedField
      label={label}
      typed={typed}
      spellCheck={false}
      frame={(line) => (
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
          {line}
        </span>
      )}
    />
  );
}

/** #rrggbb from what was typed: the # may be left out, three figures stand for six. Null for anything else. */
function hexOf(text: string): string | null {
  const trimmed = text.trim().toLowerCase();
  const marked = trimmed.startsWith('#') ? trimmed : `#${trimmed}`;
  if (!parseHex(marked)) return null;
  return marked.length === 4 ? marked.replace(/[0-9a-f]/g, '$&$&') : marked;
}
