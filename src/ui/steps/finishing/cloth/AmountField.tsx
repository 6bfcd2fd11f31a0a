// A decimal amount: a price, a number of yards, a part in the hundred. May be left empty where nothing is known.
import { amountText } from '../../../../cutting/yardage/money';
import { phrase } from '../../../../model/phrase';
import type { Problem } from '../../../../model/result';
import { TypedField } from '../../../fields/TypedField';
import { useTyped } from '../../../fields/useTyped';

interface Props {
  label: string;
  /** What the amount is in, beside the label: yd, £, %. */
  unit?: string;
  value: number | null;
  onCommit: (value: number | null) => readonly Problem[];
  least?: number;
  most: number;
  /** Whether it may be empty. */
  optional?: boolean;
  /** Shown with two decimals, or more where they were written. */
  money?: boolean;
}

export function AmountField({ label, unit, value, onCommit, least = 0, most, optional, money }: Props) {
  const shown = value === null ? '' : money ? amountText(value) : String(Number(value.toFixed(4)));
  const typed = useTyped(shown, (raw) => {
    const refuse = (code: string, words: string) => [
      { code, path: label, message: phrase(words, { least, most }) },
    ];
    const text = raw.trim().replace(',', '.');
    const read = text === '' ? null : /^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
    if (read === null ? !optional : Number.isNaN(read))
      return refuse('not-an-amount', 'Write an amount such as 12.50.');
    if (read !== null && (read < least || read > most))
      return refuse('not-in-range', 'It must be from {least} to {most}.');
    return read === value ? [] : onCommit(read);
  });
  return <TypedField label={label} typed={typed} unit={unit} inputMode="decimal" />;
}
