// A decimal amount: a price, a number of yards, a part in the hundred. May be left empty where nothing is known.
import { amountText } from '../../../../cutting/yardage/money';
import { roundedHalfUp, withDecimalPoint } from '../../../../model/decimals';
import { type Phrase, phrase } from '../../../../model/phrase';
import type { Problem } from '../../../../model/result';
import { figureOf } from '../../../../model/words/figure';
import { TypedField } from '../../../fields/TypedField';
import { useTyped } from '../../../fields/useTyped';
import { NUMBERS } from '../../../words';

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
  const shown = value === null ? '' : money ? amountText(value) : String(roundedHalfUp(value, 4));
  const typed = useTyped(shown.replace('.', NUMBERS.decimal), (raw) => {
    const refuse = (code: string, message: Phrase) => [{ code, path: label, message }];
    const text = withDecimalPoint(raw.trim());
    const read = text === '' ? null : /^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
    if (read === null ? !optional : Number.isNaN(read))
      return refuse(
        'not-an-amount',
        phrase('Write an amount such as {amount}.', { amount: figureOf(12.5, 2) }),
      );
    if (read !== null && (read < least || read > most))
      return refuse('not-in-range', phrase('It must be from {least} to {most}.', { least, most }));
    return read === value ? [] : onCommit(read);
  });
  return <TypedField label={label} typed={typed} unit={unit} inputMode="decimal" />;
}
