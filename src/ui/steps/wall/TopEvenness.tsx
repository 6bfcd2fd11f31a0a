// The evenness of the top in words: likeness of neighbours in value and colour at each scale, compared with chance, and the centres of
// lightness and warmth, which are marked on the wall when chosen. The figures lie folded behind the words.
import type { EvennessRow } from '../../../balance/evenness/evenness';
import type { PoolFigure, PoolScale } from '../../../balance/evenness/pools';
import { leanWords } from '../../../balance/evenness/spreadFindings';
import { leanMark, type WholeTop } from '../../../balance/evenness/wholeTop';
import { type Phrase, phrase } from '../../../model/phrase';
import { type Figure, figureOf } from '../../../model/words/figure';
import { useApp, useAppStore } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { useAnalysis } from '../../useAnalysis';
import { useSay } from '../../words';
import { Fold } from './setting/Fold';

const SCALE_WORDS: Readonly<Record<PoolScale, string>> = {
  wedge: 'Wedge beside wedge',
  block: 'Block beside block',
  top: 'Parts of the top',
};
const FIGURE_WORDS: Readonly<Record<PoolFigure, string>> = {
  value: 'Value',
  a: 'Green to red',
  b: 'Blue to yellow',
};
const SCALES: readonly PoolScale[] = ['wedge', 'block', 'top'];

export function TopEvenness() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const { balance } = useAnalysis(project);
  if (!balance?.wholeTop.middle) return null;
  const { evenness, wholeTop } = balance;
  const uneven = evenness.filter((row) => row.verdict === 'gathered').length;
  return (
    <Fold
      title="How even the top is"
      now={
        uneven === 0
          ? say('mixed as in a random layout')
          : say('colours cluster on {count} of {all} measures', { count: uneven, all: evenness.length })
      }
    >
      {SCALES.map((scale) => (
        <Scale key={scale} scale={scale} rows={evenness.filter((row) => row.scale === scale)} />
      ))}
      <ul className="centres">
        <Centre of="light" top={wholeTop} />
        <Centre of="warmth" top={wholeTop} />
      </ul>
      <Figures rows={evenness} />
    </Fold>
  );
}

function Scale({ scale, rows }: { scale: PoolScale; rows: readonly EvennessRow[] }) {
  const say = useSay();
  if (rows.length === 0) return null;
  return (
    <section aria-label={say(SCALE_WORDS[scale])}>
      <h4>{say(SCALE_WORDS[scale])}</h4>
      <ul>
        {rows.map((row) => (
          <li key={row.figure}>{say(row.words)}</li>
        ))}
      </ul>
    </section>
  );
}

/** The figures behind the words, with the name of the measure. */
function Figures({ rows }: { rows: readonly EvennessRow[] }) {
  const say = useSay();
  return (
    <details>
      <summary>{say('The figures behind it')}</summary>
      <table className="scores evenness" aria-label={say('How alike neighbours are')}>
        <thead>
          <tr>
            <th scope="col">{say('Neighbours in')}</th>
            <th scope="col">{say('Moran’s I')}</th>
            <th scope="col">{say('in a random layout')}</th>
            <th scope="col">{say('as high')}</th>
          </tr>
        </thead>
        {SCALES.map((scale) => (
          <ScaleFigures key={scale} scale={scale} rows={rows.filter((row) => row.scale === scale)} />
        ))}
      </table>
      <p className="quiet">
        {say(
          'Moran’s I is near 1 where neighbours are alike, and below 0 where they take turns. As high: how many random layouts reach as much.',
        )}
      </p>
    </details>
  );
}

function ScaleFigures({ scale, rows }: { scale: PoolScale; rows: readonly EvennessRow[] }) {
  const say = useSay();
  if (rows.length === 0) return null;
  return (
    <tbody>
      <tr>
        <th scope="rowgroup" colSpan={4} className="scale">
          {say(SCALE_WORDS[scale])}
        </th>
      </tr>
      {rows.map((row) => (
        <tr key={row.figure}>
          <th scope="row">{say(FIGURE_WORDS[row.figure])}</th>
          <td>{say(figure(row, row.moran))}</td>
          <td>{say(figure(row, row.expected))}</td>
          <td>{say(row.verdict === 'unsaid' ? NONE : chance(row.p))}</td>
        </tr>
      ))}
    </tbody>
  );
}

const NONE: Figure = { figure: '–' };

function figure({ verdict }: EvennessRow, value: number): Figure {
  return verdict === 'unsaid' ? NONE : figureOf(value, 2);
}

/** A probability in per cent: whole, or with one decimal where it is small. */
function chance(p: number): Phrase {
  if (p < 0.001) return phrase('< {percent}%', { percent: 0.1 });
  return phrase('{percent}%', { percent: figureOf(100 * p, p < 0.1 ? 1 : 0) });
}

/** A button for the centre of lightness or warmth, which marks it on the wall. */
function Centre({ of, top }: { of: 'light' | 'warmth'; top: WholeTop }) {
  const say = useSay();
  const store = useAppStore();
  const id = `centre:${of}`;
  const chosen = useApp((app) => app.spot?.id === id);
  const mark = leanMark(top, of);
  if (!mark) return null;
  return (
    <li>
      <button
        type="button"
        aria-pressed={chosen}
        onClick={() => {
          const app = store.getState();
          app.showFinding(null);
          if (!chosen) app.showSpot({ id, marks: [mark], blocks: [] });
        }}
      >
        <Fractions text={say(leanWords(of, top[of]))} />
      </button>
    </li>
  );
}
