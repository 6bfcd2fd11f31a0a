// A table of the terms of a score before and after, in words and figures. An arrow shows better or worse, not colour alone.
import { TERM_NAMES, type TermName, type Terms } from '../../../balance/score/weights';
import { figureOf } from '../../../model/words/figure';
import { useSay } from '../../words';

export const TERM_WORDS: Readonly<Record<TermName, string>> = {
  clashLength: 'Fabric meeting itself',
  lookAlikes: 'Look-alikes meeting',
  valueSpread: 'Lights and darks',
  colourSpread: 'Colours',
  fabricSpread: 'Each fabric’s spread',
  wholeTopWeight: 'Overall balance',
};

/** `of`: the change whose parts they are. */
export function ScoreTable({ of, before, after }: { of: string; before: Terms; after: Terms }) {
  const say = useSay();
  return (
    <table className="scores" aria-label={say('Parts of the score, before and after: {of}', { of })}>
      <thead>
        <tr>
          <th scope="col">{say('In a random layout each is about 1; lower is better')}</th>
          <th scope="col">{say('before')}</th>
          <th scope="col">{say('after')}</th>
        </tr>
      </thead>
      <tbody>
        {TERM_NAMES.map((name) => (
          <tr key={name}>
            <th scope="row">{say(TERM_WORDS[name])}</th>
            <td>{say(figureOf(before[name], 2))}</td>
            <td>
              {say(figureOf(after[name], 2))} <Trend by={after[name] - before[name]} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Trend({ by }: { by: number }) {
  const say = useSay();
  const [sign, words] = Math.abs(by) < 0.005 ? ['=', 'the same'] : by < 0 ? ['▾', 'better'] : ['▴', 'worse'];
  return (
    <>
      <span aria-hidden>{sign}</span>
      <span className="hidden-text">{say(words)}</span>
    </>
  );
}
