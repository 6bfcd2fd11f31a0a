// A field for a length as makers write it: 7 1/2, 14-1/4, 2½, 36.2 cm.
import { type Phrase, phrase } from '../../model/phrase';
import type { Problem } from '../../model/result';
import { type Inches, type LengthUnit, lengthFieldText, parseLength } from '../../model/units';
import { NUMBERS, useUnit } from '../words';
import { TypedField } from './TypedField';
import { useTyped } from './useTyped';

interface Props {
  label: string;
  /** Null: not known yet. */
  value: Inches | null;
  /** Takes the new length; returns why it was refused. */
  onCommit: (value: Inches) => readonly Problem[];
  least?: Inches;
  most?: Inches;
  hideLabel?: boolean;
  disabled?: boolean;
  /** Id of the words that a screen reader reads with the field. */
  describedBy?: string | undefined;
}

const EXAMPLES: Readonly<Record<LengthUnit, Phrase>> = {
  in: phrase('Write a length such as 7 1/2 or {decimal}.', { decimal: 7.5 }),
  cm: phrase('Write a length in centimetres such as {decimal}.', { decimal: 19.5 }),
};

export function LengthField({ label, value, onCommit, least = 0, most = 4000, ...rest }: Props) {
  const unit = useUnit();
  const typed = useTyped(value === null ? '' : lengthFieldText(value, unit, NUMBERS), (text) => {
    const refuse = (code: string, message: Phrase) => [{ code, path: label, message }];
    const read = parseLength(text, unit);
    if (read === null) return refuse('not-a-length', EXAMPLES[unit]);
    if (read < least)
      return refuse('too-short', phrase('It must be at least {least}.', { least: { atLeast: least } }));
    if (read > most)
      return refuse('too-long', phrase('It must be at most {most}.', { most: { atMost: most } }));
    return value !== null && Math.abs(read - value) < 1e-9 ? [] : onCommit(read);
  });
  return <TypedField label={label} typed={typed} unit={unit} inputMode="text" {...rest} />;
}
