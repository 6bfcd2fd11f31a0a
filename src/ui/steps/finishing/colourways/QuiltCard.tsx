// The card of the quilt itself, first among its colourways for comparison.
import { useDeferredValue } from 'react';
import { useApp } from '../../../app';
import { SmallTop } from '../../../wall/SmallTop';
import { useSay } from '../../../words';
import { CardFigures } from './CardFigures';

export function QuiltCard() {
  const say = useSay();
  const project = useDeferredValue(useApp((app) => app.project));
  return (
    <li className="colourway">
      <SmallTop project={project} label={say('The quilt as it is')} />
      <p className="colourway-name as-it-is">{say('As it is')}</p>
      <CardFigures project={project} />
    </li>
  );
}
