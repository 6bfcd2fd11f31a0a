// The clashes inside the block with their lengths and places, those on the rim first.
import type { Clash } from '../../../../balance/clashes/clashes';
import { clashWords } from '../../../../balance/clashes/clashFindings';
import { useApp } from '../../../app';
import { Fractions } from '../../../fields/Fractions';
import { useSay } from '../../../words';

export function Meetings({ clashes, complete }: { clashes: readonly Clash[]; complete: boolean }) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const rims = clashes.filter((clash) => clash.kind === 'rim');
  const inside = clashes.filter((clash) => clash.kind !== 'rim');
  return (
    <section aria-labelledby="meet-title">
      <h3 id="meet-title">{say('Clashes in this block')}</h3>
      {rims.some((clash) => clash.likeness === 1) ? null : (
        <p>
          {complete
            ? say('No fabric meets itself on the rim.')
            : say('No fabric meets itself on the rim so far.')}
        </p>
      )}
      {rims.length === 0 ? null : (
        <ul className="marked">
          {rims.map((clash) => (
            <li key={clash.id}>
              <Fractions text={say(clashWords(project, clash))} />
            </li>
          ))}
        </ul>
      )}
      {inside.length > 0 ? (
        <details className="leaf">
          <summary>
            <Fractions
              text={say('Inside: {length} in {count} stretches', {
                count: inside.length,
                length: { inches: inside.reduce((sum, one) => sum + one.inches, 0) },
              })}
            />
          </summary>
          <ul>
            {inside.map((clash) => (
              <li key={clash.id}>
                <Fractions text={say(clashWords(project, clash))} />
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </section>
  );
}
