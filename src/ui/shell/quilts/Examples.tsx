// The list of examples that come with the tool, each with its name and a line on its size.
import { useEffect, useState } from 'react';
import { type DemoSummary, demoSummaries } from '../../../store/demoSummary';
import type { Demo } from '../../../store/firstQuilt';
import { Fractions } from '../../fields/Fractions';
import { useSession } from '../../session';
import { useSay } from '../../words';
import { QuiltLine } from './QuiltLine';

export function Examples({ onOpen }: { onOpen: (demo: Demo) => void }) {
  const say = useSay();
  const { demos } = useSession();
  const [summaries, setSummaries] = useState<readonly DemoSummary[]>([]);
  useEffect(() => {
    let left = false;
    void demoSummaries(demos).then((made) => {
      if (!left) setSummaries(made);
    });
    return () => {
      left = true;
    };
  }, [demos]);
  return (
    <section aria-label={say('Examples')}>
      <h3>{say('Examples')}</h3>
      <ul>
        {summaries.map(({ demo, name, words, project }) => (
          <li key={demo.name}>
            <QuiltLine
              name={name}
              of={`example ${demo.name}`}
              look={() => Promise.resolve(project)}
              onOpen={() => onOpen(demo)}
            >
              {words ? <Fractions text={say(words)} /> : null}
            </QuiltLine>
          </li>
        ))}
      </ul>
    </section>
  );
}
