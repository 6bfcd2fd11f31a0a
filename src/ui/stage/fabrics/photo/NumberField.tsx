// A field for a number of pixels or degrees, for whoever wants the frame exact.
import { phrase } from '../../../../model/phrase';
import { TypedField } from '../../../fields/TypedField';
import { useTyped } from '../../../fields/useTyped';

interface Props {
  label: string;
  value: number;
  least: number;
  most: number;
  /** Takes the number; false where the frame would leave the photograph. */
  onCommit: (value: number) => boolean;
}

const OUTSIDE = phrase('The frame would leave the photograph.');

export function NumberField({ label, value, least, most, onCommit }: Props) {
  const typed = useTyped(String(Math.round(value)), (text) => {
    const read = /^\s*[-−]?\d+([.,]\d+)?\s*$/.test(text)
      ? Number(text.trim().replace('−', '-').replace(',', '.'))
      : Number.NaN;
    const refuse = (message: typeof OUTSIDE) => [{ code: 'not-in-range', path: label, message }];
    if (!(read >= least && read <= most))
      return refuse(phrase('Write a number from {least} to {most}.', { least, most }));
    return onCommit(read) ? [] : refuse(OUTSIDE);
  });
  return <TypedField label={label} typed={typed} inputMode="numeric" style={{ width: '5.2rem' }} />;
}
