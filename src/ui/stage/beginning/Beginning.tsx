// What an empty quilt shows: the few ways to begin, each a card that opens in place and ends in a whole top.
import { useEffect, useRef } from 'react';
import { USUAL } from '../../../model/lengths';
import { type Phrase, phrase } from '../../../model/phrase';
import type { LengthUnit } from '../../../model/units';
import type { WayToBegin } from '../../../store/drafts';
import { useAppStore } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { heedRefusedFields } from '../../fields/refusedFields';
import { heedSecondPress } from '../../fields/secondPress';
import { useSay, useUnit } from '../../words';
import './beginning.css';
import { ExampleList } from './ExampleList';
import { useBeginningForm } from './form';
import { FabricForm, RollForm, SizeForm, StripsForm } from './WayForms';
import { WayPicture } from './WayPicture';

interface Way {
  readonly way: WayToBegin;
  readonly name: string;
  readonly line: (unit: LengthUnit) => Phrase;
  /** What opens under the card; null: the way leads to another step. */
  readonly Form: (() => React.ReactNode) | null;
}

const WAYS: readonly Way[] = [
  {
    way: 'strips',
    name: 'Start from strips I have',
    line: () => phrase('Say how many there are; sets, blocks and wall follow.'),
    Form: StripsForm,
  },
  {
    way: 'fabric',
    name: 'Start from fabric I have',
    line: () => phrase('Yardage or fat quarters, cut into strips for the largest top.'),
    Form: FabricForm,
  },
  {
    way: 'sewn',
    name: 'Enter blocks already sewn',
    line: () => phrase('Enter them wedge by wedge, then hang and shuffle them.'),
    Form: null,
  },
  {
    way: 'size',
    name: 'Plan a size I want',
    line: () => phrase('Width and height; the strips to cut follow.'),
    Form: SizeForm,
  },
  {
    way: 'roll',
    name: 'Open a roll of precut strips',
    line: (unit) =>
      phrase('Forty strips cut {width} wide, or what your roll has.', {
        width: { inches: USUAL[unit].precut.width },
      }),
    Form: RollForm,
  },
  {
    way: 'example',
    name: 'Look at an example',
    line: () => phrase('Open one and change it as you like.'),
    Form: ExampleList,
  },
];

export function Beginning() {
  const say = useSay();
  const open = useBeginningForm()[0].way;
  return (
    <section
      className="beginning"
      aria-labelledby="beginning-title"
      onClickCapture={(event) => {
        heedSecondPress(event);
        if (!event.isPropagationStopped()) heedRefusedFields(event);
      }}
    >
      <h2 id="beginning-title">{say('Begin the quilt')}</h2>
      <p>
        {say('Choose what you have. Everything can be changed afterwards, and one undo takes a layout back.')}
      </p>
      <ul className="ways">
        {/* The open card comes first, where its form has the whole width and needs no scrolling. */}
        {WAYS.toSorted((one, other) => Number(other.way === open) - Number(one.way === open)).map((way) => (
          <WayCard key={way.way} {...way} />
        ))}
      </ul>
    </section>
  );
}

function WayCard({ way, name, line, Form }: Way) {
  const say = useSay();
  const unit = useUnit();
  const store = useAppStore();
  const [form, change] = useBeginningForm();
  const card = useRef<HTMLLIElement>(null);
  const pressed = useRef(false);
  const open = Form !== null && form.way === way;
  useEffect(() => {
    if (!open || !pressed.current) return;
    pressed.current = false;
    const first = card.current?.querySelector('input');
    first?.focus();
    // What is usual stands there; a number typed takes its place.
    first?.select();
    card.current?.scrollIntoView({ block: 'nearest' });
  }, [open]);
  return (
    <li ref={card} className={open ? 'way open' : 'way'}>
      <button
        type="button"
        aria-expanded={Form === null ? undefined : open}
        onClick={() => {
          pressed.current = !open;
          if (Form !== null) change({ way: open ? null : way });
          else {
            change({ way: null, aside: 'blocks' });
            store.getState().goTo('blocks');
            store.getState().lay({ entering: 'keys', into: null });
          }
        }}
      >
        <WayPicture way={way} />
        <span>
          <strong>{say(name)}</strong>
          <span className="quiet">
            <Fractions text={say(line(unit))} />
          </span>
        </span>
      </button>
      {open && Form ? <Form /> : null}
    </li>
  );
}
