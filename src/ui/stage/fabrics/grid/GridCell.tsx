// One cell of the grid that is typed into. What was typed is taken when the cell is left, by whatever key or press; what is refused
// stays, with its reason under it.
import { useEffect, useRef } from 'react';
import { type Phrase, phrase } from '../../../../model/phrase';
import { MOST_OF_A_KIND, STRIP_LENGTH, STRIP_WIDTH } from '../../../../model/project';
import type { Problem } from '../../../../model/result';
import { type Inches, type LengthUnit, lengthFieldText, parseLength } from '../../../../model/units';
import type { RefusedText } from '../../../../store/app';
import { useAppStore } from '../../../app';
import { Complaint } from '../../../fields/Complaint';
import { useTyped } from '../../../fields/useTyped';
import { NUMBERS, useUnit } from '../../../words';

export interface Place {
  /** Line from 0; HEADS, SAME_FOR_ALL and NEW_FABRIC are beside them. */
  readonly line: number;
  /** 0 is the length; 1 and on are the widths. */
  readonly column: number;
}

export const HEADS = -2;
export const SAME_FOR_ALL = -1;
export const NEW_FABRIC = -3;

interface CellProps extends Place {
  /** Name of the field for screen readers. */
  name: string;
  shown: string;
  take: (text: string) => readonly Problem[];
  /** Hears the text while it is typed, and null when the cell is left. */
  onType?: (text: string | null) => void;
  placeholder?: string;
  inputMode?: 'numeric' | 'text';
  /** Whether it adds something: then Tab takes the text and stays. */
  adds?: boolean;
}

export function GridCell({
  line,
  column,
  name,
  shown,
  take,
  onType,
  placeholder,
  inputMode,
  adds,
}: CellProps) {
  const store = useAppStore();
  const { id, problems, input } = useTyped(shown, take, store.getState().laid.refusedCells[name]);
  const left = useRef<RefusedText | null>(null);
  useEffect(() => {
    left.current = problems.length > 0 ? { text: input.value, problems } : null;
  });
  useEffect(() => {
    const keep = (refused: RefusedText | null) => {
      const { [name]: _, ...others } = store.getState().laid.refusedCells;
      store.getState().lay({ refusedCells: refused ? { ...others, [name]: refused } : others });
    };
    if (store.getState().laid.refusedCells[name]) keep(null);
    // What stands refused when the grid goes is there again when it comes back.
    return () => {
      if (left.current) keep(left.current);
    };
  }, [store, name]);
  return (
    <>
      <input
        id={id}
        className="grid-input"
        aria-label={name}
        autoComplete="off"
        dir={inputMode === undefined ? 'auto' : 'ltr'}
        inputMode={inputMode ?? 'text'}
        placeholder={placeholder}
        data-line={line}
        data-column={column}
        data-shown={shown}
        data-adds={adds}
        value={input.value}
        onChange={(event) => {
          input.onChange(event);
          onType?.(event.target.value);
        }}
        onFocus={(event) => event.target.select()}
        onBlur={(event) => {
          input.onBlur(event);
          onType?.(null);
        }}
        onKeyDown={(event) => {
          // Enter leaves the cell (useGridKeys), which takes the text; Escape discards it.
          if (event.key === 'Escape') input.onKeyDown(event);
        }}
        aria-invalid={problems.length > 0}
        aria-describedby={`${id}-why`}
      />
      <Complaint problems={problems} id={`${id}-why`} />
    </>
  );
}

interface CountProps extends Place {
  name: string;
  /** Null where the lines of "same for all" differ. */
  count: number | null;
  onCount: (count: number, place: Place) => readonly Problem[];
  onLive: (place: Place, count: number | null) => void;
  placeholder?: string;
}

/** A cell with a number of strips; an empty one is 0. */
export function CountCell({ count, onCount, onLive, ...cell }: CountProps) {
  const { line, column } = cell;
  return (
    <GridCell
      {...cell}
      inputMode="numeric"
      shown={count ? String(count) : ''}
      take={(text) => {
        const read = readCount(text);
        if (read !== null) return read === count ? [] : onCount(read, { line, column });
        const message = phrase('Write a whole number up to {most}.', { most: MOST_OF_A_KIND });
        return [{ code: 'not-a-count', path: 'count', message }];
      }}
      onType={(text) => onLive({ line, column }, text === null ? null : readCount(text))}
    />
  );
}

/** A number of strips as it is typed; null for anything that is none. */
function readCount(text: string): number | null {
  const trimmed = text.trim();
  if (trimmed === '') return 0;
  return /^\d+$/.test(trimmed) && Number(trimmed) <= MOST_OF_A_KIND ? Number(trimmed) : null;
}

interface LengthProps extends Place {
  name: string;
  /** Null where nothing is written yet, or where lengths differ. */
  value: Inches | null;
  /** What the cell holds: the width of a column, or the length of a line. */
  of: 'width' | 'length';
  onLength: (to: Inches) => readonly Problem[];
  /** Called for an empty text. */
  onEmpty?: () => readonly Problem[];
  placeholder?: string;
  adds?: boolean;
}

export function LengthCell({ value, of, onLength, onEmpty, ...cell }: LengthProps) {
  const unit = useUnit();
  const { least, most } = of === 'width' ? STRIP_WIDTH : STRIP_LENGTH;
  return (
    <GridCell
      {...cell}
      inputMode="text"
      shown={value === null ? '' : lengthFieldText(value, unit, NUMBERS)}
      take={(text) => {
        if (text.trim() === '') return onEmpty?.() ?? [];
        const read = parseLength(text, unit);
        const refuse = (message: Phrase) => [{ code: 'not-a-length', path: of, message }];
        if (read === null) return refuse(EXAMPLES[of][unit]);
        if (read < least)
          return refuse(phrase('It must be at least {least}.', { least: { atLeast: least } }));
        if (read > most) return refuse(phrase('It must be at most {most}.', { most: { atMost: most } }));
        return value !== null && Math.abs(read - value) < 1e-9 ? [] : onLength(read);
      }}
    />
  );
}

const EXAMPLES: Readonly<Record<'width' | 'length', Readonly<Record<LengthUnit, Phrase>>>> = {
  width: {
    in: phrase('Write a cut width such as 1 1/2 or {decimal}.', { decimal: 1.5 }),
    cm: phrase('Write a cut width in centimetres such as {decimal}.', { decimal: 6.5 }),
  },
  length: {
    in: phrase('Write a length such as 42 or 20 1/2.'),
    cm: phrase('Write a length in centimetres such as 110.'),
  },
};
