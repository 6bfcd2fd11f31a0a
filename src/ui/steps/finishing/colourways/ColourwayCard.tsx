// The card of one colourway: its picture and figures; when open, its swaps.
import { ChevronDown } from 'lucide-react';
import { useDeferredValue } from 'react';
import type { Colourway } from '../../../../model/project';
import { useApp } from '../../../app';
import { SmallTop } from '../../../wall/SmallTop';
import { useSay } from '../../../words';
import { CardFigures } from './CardFigures';
import { OpenColourway } from './OpenColourway';
import { useWorn } from './useWorn';

export function ColourwayCard(props: { colourway: Colourway; open: boolean; onOpen: () => void }) {
  const { colourway, open, onOpen } = props;
  const say = useSay();
  const worn = useWorn(useDeferredValue(useApp((app) => app.project)), useDeferredValue(colourway));
  return (
    <li className="colourway">
      <SmallTop project={worn} label={say('The quilt in {name}', { name: colourway.name })} />
      <button type="button" className="button bare colourway-name" aria-expanded={open} onClick={onOpen}>
        <bdi className="grow">{colourway.name}</bdi>
        <ChevronDown size={16} aria-hidden />
      </button>
      <CardFigures project={worn} />
      {open ? <OpenColourway colourway={colourway} worn={worn} /> : null}
    </li>
  );
}
