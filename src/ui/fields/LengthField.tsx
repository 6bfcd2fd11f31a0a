// A field for a length as makers write it: 7 1/2, 14-1/4, 2½, 36.2 cm.
import { phrase } from '../../model/phrase';
import type { Problem } from '../../model/result';
import { type Inches, type LengthUnit, lengthFieldText, parseLength } from '../../model/units';
import { useUnit } from '../words';
import { TypedField } from './TypedField';
import { useTyped } from './useTyped';

interface Props {
  label: string;
  value: Inches;
  /** Takes the new length; returns why it was refused. */
  onCommit: (value: Inches) => readonly Problem[];
  least?: Inches;
  most?: Inches;
  hideLabel?: boolean;
  disabled?: boolean;
  /** Id of the words that a screen reader reads with the field. */
  describedBy?: string | undefined;
}

const EXAMPLES: Readonly<Record<LengthUnit, string>> = {
  in: 'Write a length such as 7 1/2 or 7.5.',
  cm: 'Write a length in centimetres such as 19.5.',
};

export function LengthField({ label, value, onCommit, least = 0, most = 4000, ...rest }: Props) {
  const unit = useUnit();
  const typed = useTyped(lengthFieldText(value, unit), (text) => {
    const refuse = (code: string, say: string, values = {}) => [
      { code, path: label, message: phrase(say, values) },
    ];
    const read = parseLength(text, unit);
    if (read === null) return refuse('not-a-length', EXAMPLES[unit]);
    if (read < least)
      return refuse('too-short', 'It must be at least {least}.', { least: { inches: least } });
    if (read > most) return refuse('too-long', 'It must be at most {most}.', { most: { inches: most } });
    return Math.abs(read - value) < 1e-9 ? [] : onCommit(read);
  });
  return <TypedField label={label} typed={typed} unit={unit} inputMode="text" {...rest} />;
}
