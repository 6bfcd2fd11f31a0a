// The forms of the ways to begin. Each holds what is usual; its button lays the whole quilt out.
import { LayoutGrid } from 'lucide-react';
import { type FormEvent, type ReactNode, useMemo } from 'react';
import { type SizeOffer, sizeOffers } from '../../../cutting/top/sizeOffers';
import { beginAtSize, beginWith, beginWithRoll } from '../../../editing/commands/begin';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { Problem } from '../../../model/result';
import { rowWords } from '../../../model/words/rowWords';
import { useApp, useAppStore } from '../../app';
import { Complaint } from '../../fields/Complaint';
import { CountField } from '../../fields/CountField';
import { Fractions } from '../../fields/Fractions';
import { LengthField } from '../../fields/LengthField';
import { ClothFields } from '../../steps/fabrics/onHand/ClothFields';
import { usualSize } from '../../steps/fabrics/onHand/clothWords';
import { frameWords, sizeWords } from '../../steps/wall/setting/offerWords';
import { useSay } from '../../words';
import { useBeginningForm } from './form';
import { useBegin } from './useBegin';

const MOST_FABRICS = 60;
const MOST_STRIPS = 400;
const MOST_BLOCKS = 400;

export function StripsForm() {
  const say = useSay();
  const [form, change] = useBeginningForm();
  const [begin, problems] = useBegin();
  const each = form.strips.reduce((sum, row) => sum + row.count, 0);
  const setRow = (at: number, to: Partial<(typeof form.strips)[number]>) =>
    change({ strips: form.strips.map((row, index) => (index === at ? { ...row, ...to } : row)) });
  return (
    <WayForm
      name="Strips I have"
      problems={problems}
      sums={counted(form.fabrics * each, '1 strip in all', '{count} strips in all')}
      aside={<FabricByFabric />}
      onBegin={() =>
        begin(form.fabrics, (fabrics) =>
          beginWith(fabrics, { strips: form.strips.map((row) => ({ ...row, length: form.length })) }),
        )
      }
    >
      <FabricsField />
      <LengthField
        label="Length of the strips"
        value={form.length}
        least={1}
        onCommit={(length) => change({ length })}
      />
      {form.strips.map((row, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: rows are told apart by their order only
        <fieldset key={at} className="way-pair">
          <legend className="hidden-text">{say('Strips {number}', { number: at + 1 })}</legend>
          <LengthField
            label="Strips cut"
            value={row.width}
            least={0.25}
            most={60}
            onCommit={(width) => setRow(at, { width })}
          />
          <CountField
            label="Of each fabric"
            of={say('Strips {number}', { number: at + 1 })}
            value={row.count}
            least={0}
            most={MOST_STRIPS}
            onCommit={(count) => setRow(at, { count })}
          />
        </fieldset>
      ))}
    </WayForm>
  );
}

export function FabricForm() {
  const store = useAppStore();
  const [form, change] = useBeginningForm();
  const [begin, problems] = useBegin();
  return (
    <WayForm
      name="Fabric I have"
      problems={problems}
      sums={phrase('Corners and sashing take background fabric, which is not counted here.')}
      aside={<FabricByFabric />}
      onBegin={() => begin(form.fabrics, (fabrics) => beginWith(fabrics, { cloth: [form.cloth] }))}
    >
      <FabricsField />
      <div className="way-cloth stack">
        <ClothFields
          cloth={form.cloth}
          onChange={(to) => change({ cloth: { ...form.cloth, ...to } })}
          onKind={(kind) =>
            change({ cloth: { ...form.cloth, kind, ...usualSize(kind, store.getState().project) } })
          }
        />
      </div>
    </WayForm>
  );
}

export function SizeForm() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const [form, change] = useBeginningForm();
  const [begin, problems] = useBegin();
  const offer = useMemo(
    () => sizeOffers(project, form.size).find((one) => one.blocks <= MOST_BLOCKS) ?? null,
    [project, form.size],
  );
  return (
    <WayForm
      name="A size I want"
      problems={problems}
      sums={offer ? offerWords(offer) : phrase('These blocks make no top within half a block of that size.')}
      disabled={offer === null}
      onBegin={() =>
        offer && begin(form.fabrics, (fabrics) => beginAtSize(fabrics, offer), { blocks: offer.blocks })
      }
    >
      <fieldset className="way-pair">
        <legend className="hidden-text">{say('Size')}</legend>
        <LengthField
          label="Width"
          value={form.size.width}
          least={6}
          most={160}
          onCommit={(width) => change({ size: { ...form.size, width } })}
        />
        <LengthField
          label="Height"
          value={form.size.height}
          least={6}
          most={160}
          onCommit={(height) => change({ size: { ...form.size, height } })}
        />
      </fieldset>
      <FabricsField />
    </WayForm>
  );
}

function offerWords(offer: SizeOffer): Phrase {
  return phrase('{size}: {rows}, {blocks}; {frame}', {
    size: sizeWords(offer),
    rows: rowWords(offer),
    blocks: counted(offer.blocks, '1 block', '{count} blocks'),
    frame: frameWords(offer),
  });
}

export function RollForm() {
  const [{ roll }, change] = useBeginningForm();
  const length = useApp((app) => app.project.preferences.usableWidth);
  const [begin, problems] = useBegin();
  const set = (to: Partial<typeof roll>) => change({ roll: { ...roll, ...to } });
  return (
    <WayForm
      name="A roll of precut strips"
      problems={problems}
      sums={phrase('Strips {length} long, sewn as wide as they are.', { length: { inches: length } })}
      onBegin={() =>
        begin(roll.fabrics, (fabrics) =>
          beginWithRoll(fabrics, { width: roll.width, length, count: roll.strips }),
        )
      }
    >
      <CountField
        label="Strips"
        value={roll.strips}
        least={1}
        most={MOST_STRIPS}
        onCommit={(strips) => set({ strips })}
      />
      <LengthField
        label="Width of a strip"
        value={roll.width}
        least={0.75}
        most={12}
        onCommit={(width) => set({ width })}
      />
      <CountField
        label="Fabrics"
        value={roll.fabrics}
        least={2}
        most={MOST_FABRICS}
        onCommit={(fabrics) => set({ fabrics })}
      />
    </WayForm>
  );
}

function FabricsField() {
  const [form, change] = useBeginningForm();
  return (
    <CountField
      label="Fabrics"
      value={form.fabrics}
      least={2}
      most={MOST_FABRICS}
      onCommit={(fabrics) => change({ fabrics })}
    />
  );
}

/** The way to the Fabrics step, for fabrics of which there is not the same of each. */
function FabricByFabric() {
  const say = useSay();
  const store = useAppStore();
  const [, change] = useBeginningForm();
  return (
    <button
      data-always
      type="button"
      className="button"
      onClick={() => {
        change({ aside: 'fabrics' });
        store.getState().goTo('fabrics');
      }}
    >
      {say('Enter each fabric instead')}
    </button>
  );
}

interface FormProps {
  name: string;
  problems: readonly Problem[];
  /** What the fields come to. */
  sums: Phrase;
  disabled?: boolean;
  aside?: ReactNode;
  onBegin: () => void;
  children: ReactNode;
}

function WayForm({ name, problems, sums, disabled = false, aside, onBegin, children }: FormProps) {
  const say = useSay();
  return (
    <form
      className="way-form"
      aria-label={say(name)}
      onSubmit={(event: FormEvent) => {
        event.preventDefault();
        onBegin();
      }}
    >
      <div className="way-fields">{children}</div>
      <p aria-live="polite">
        <Fractions text={say(sums)} />
      </p>
      <p className="quiet">
        {say('The fabrics are made up, light to dark: rename, recolour or replace them under Fabrics.')}
      </p>
      <Complaint problems={problems} />
      <div className="row">
        <button data-once type="submit" className="button solid" disabled={disabled}>
          <LayoutGrid size={16} aria-hidden /> {say('Lay out the whole quilt')}
        </button>
        {aside}
      </div>
    </form>
  );
}
