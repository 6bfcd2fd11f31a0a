// A field for a short text, mostly a name. A text that is too long is refused with its length, not cut off.
import { LONGEST_NAME } from '../../model/name';
import { phrase } from '../../model/phrase';
import type { Problem } from '../../model/result';
import { TypedField } from './TypedField';
import { useTyped } from './useTyped';

interface Props {
  label: string;
  value: string;
  onCommit: (value: string) => readonly Problem[];
  hideLabel?: boolean;
  longest?: number;
  required?: boolean;
}

export function TextField({
  label,
  value,
  onCommit,
  hideLabel,
  longest = LONGEST_NAME,
  required = true,
}: Props) {
  const typed = useTyped(value, (raw) => {
    const text = raw.trim();
    if (required && text === '')
      return [{ code: 'empty', path: label, message: phrase('It cannot be empty.') }];
    if (text.length > longest) {
      const values = { longest, length: text.length };
      const message = phrase('At most {longest} characters; it has {length}.', values);
      return [{ code: 'too-long', path: label, message }];
    }
    return text === value ? [] : onCommit(text);
  });
  return <TypedField label={label} typed={typed} hideLabel={hideLabel} dir="auto" />;
}
