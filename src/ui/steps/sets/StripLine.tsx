// One strip of a set: its cloth as wide as it shows, its fabric and cut width. It opens to be changed.
import { ArrowDown, ArrowUp, Lock, LockOpen, Trash2 } from 'lucide-react';
import type { KeyboardEvent, Ref } from 'react';
import type { Strip } from '../../../model/project';
import type { Problem } from '../../../model/result';
import { useApp } from '../../app';
import { FabricPicker } from '../../fields/FabricPicker';
import { Fractions } from '../../fields/Fractions';
import { LengthField } from '../../fields/LengthField';
import { isKey } from '../../keys';
import { useEscape } from '../../useEscape';
import { clothFill } from '../../wall/cloth';
import { useSay } from '../../words';

interface Props {
  row: Ref<HTMLLIElement>;
  strip: Strip;
  /** Number of the strip, from 1 at the bottom. */
  number: number;
  count: number;
  /** Sewn: shown, not changed. */
  locked: boolean;
  open: boolean;
  onOpen: (open: boolean) => void;
  /** Moves the strip in the list and keeps the focus on the part that was used. */
  onMove: (by: 1 | -1, part: string) => void;
  onChange: (to: Partial<Strip>) => readonly Problem[];
  onRemove: () => void;
}

/** Screen pixels to the inch of cut width in the list. */
const SCALE = 16;

export function StripLine(props: Props) {
  const { row, strip, number, count, locked, open, onOpen, onMove } = props;
  const say = useSay();
  useEscape(() => onOpen(false), open);
  const fabric = useApp((app) => app.project.fabrics.find((one) => one.id === strip.fabric));
  const values = { number, count, name: fabric?.name ?? '', width: { inches: strip.width } };
  const moveByKey = (event: KeyboardEvent) => {
    const up = isKey(event, 'stripUp');
    if (!up && !isKey(event, 'stripDown')) return;
    event.preventDefault();
    onMove(up ? -1 : 1, (event.target as HTMLElement).dataset.part ?? 'open');
  };
  return (
    <li ref={row} className="set-strip">
      {/* biome-ignore lint/a11y/noStaticElementInteractions: Alt and arrows work on every button in the line */}
      <div className="set-strip-line" onKeyDown={locked ? undefined : moveByKey}>
        <button
          type="button"
          className="set-strip-open"
          data-part="open"
          disabled={locked}
          aria-expanded={open}
          aria-label={say(
            strip.locked
              ? 'Strip {number}: {name}, cut {width}, locked'
              : 'Strip {number}: {name}, cut {width}',
            values,
          )}
          onClick={() => onOpen(!open)}
        >
          <svg className="set-strip-cloth" height={Math.max(8, strip.width * SCALE)} aria-hidden>
            <g transform={`scale(${SCALE})`}>
              <rect width="20" height={strip.width} fill={fabric ? clothFill(fabric) : 'none'} />
            </g>
          </svg>
          <span className="set-strip-words">
            <span className="one-line">
              {strip.locked ? <Lock size={13} aria-hidden /> : null} <bdi>{fabric?.name ?? ''}</bdi>
            </span>
            <Rim number={number} count={count} />
          </span>
          <span className="set-strip-width">
            <Fractions text={say('{width}', values)} />
          </span>
        </button>
        {locked ? null : (
          <>
            <button
              type="button"
              className="button bare set-move"
              data-part="up"
              disabled={number === count}
              aria-label={say('Move strip {number} up', values)}
              onClick={() => onMove(-1, 'up')}
            >
              <ArrowUp size={15} aria-hidden />
            </button>
            <button
              type="button"
              className="button bare set-move"
              data-part="down"
              disabled={number === 1}
              aria-label={say('Move strip {number} down', values)}
              onClick={() => onMove(1, 'down')}
            >
              <ArrowDown size={15} aria-hidden />
            </button>
          </>
        )}
      </div>
      {open ? <OpenStrip {...props} /> : null}
    </li>
  );
}

function Rim({ number, count }: { number: number; count: number }) {
  const say = useSay();
  if (number === 1) return <span className="quiet">{say('bottom strip: outer edge of tip-up wedges')}</span>;
  if (number === count)
    return <span className="quiet">{say('top strip: outer edge of tip-down wedges')}</span>;
  return null;
}

function OpenStrip({ strip, number, onChange, onRemove }: Props) {
  const say = useSay();
  return (
    <div className="set-strip-form">
      <FabricPicker label="Fabric" value={strip.fabric} onChange={(fabric) => onChange({ fabric })} />
      <LengthField
        label="Cut width"
        value={strip.width}
        least={0.25}
        most={60}
        onCommit={(width) => onChange({ width })}
      />
      <button
        type="button"
        className="button bare"
        aria-pressed={strip.locked === true}
        aria-label={say('Lock strip {number}', { number })}
        title={say('A locked strip keeps its place when sets are made at random')}
        onClick={() => onChange({ locked: !strip.locked })}
      >
        {strip.locked ? <Lock size={16} aria-hidden /> : <LockOpen size={16} aria-hidden />}
      </button>
      <button
        type="button"
        className="button bare"
        aria-label={say('Take strip {number} out', { number })}
        title={say('Take it out')}
        onClick={onRemove}
      >
        <Trash2 size={16} aria-hidden />
      </button>
    </div>
  );
}
