// A field for a colour, from the system's picker or typed as #rrggbb. The cloth shows each colour of the open picker; the colour
// is taken when the picker closes.
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
  /** Called with each colour while the picker is open; with null when a colour is taken or the picker is left. */
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
  // React's onChange fires at every move in the picker; the browser's own change event only when the colour is taken.
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

/** A typed colour as #rrggbb; the # may be missing, and three digits stand for six. Null for anything else. */
function hexOf(text: string): string | null {
  const trimmed = text.trim().toLowerCase();
  const marked = trimmed.startsWith('#') ? trimmed : `#${trimmed}`;
  if (!parseHex(marked)) return null;
  return marked.length === 4 ? marked.replace(/[0-9a-f]/g, '$&$&') : marked;
}
