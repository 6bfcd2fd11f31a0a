// The fabrics for one band, the one most like what is seen first; or a new fabric of what is seen.
import { Plus } from 'lucide-react';
import { useEffect, useMemo, useRef } from 'react';
import { addFabric } from '../../../editing/commands/fabrics';
import { capital } from '../../../model/name';
import type { FabricId } from '../../../model/project';
import type { ReadBand } from '../../../photo/block/readLook';
import { nameFor } from '../../../photo/fabric/figures';
import { useApp, useAppStore } from '../../app';
import { Apart } from '../../fields/Apart';
import { Complaint, useRun } from '../../fields/Complaint';
import { Swatch } from '../../fields/Swatch';
import { Toolbar } from '../../fields/Toolbar';
import { useEscape } from '../../useEscape';
import { useSay, useWrite } from '../../words';
import { byLikeness, seenColour } from './bandWords';
import { FabricOfStrip, type ReadStrip, useFabricOfStrip } from './FabricOfStrip';

interface Props {
  /** The band as it is now. */
  words: string;
  seen: ReadBand;
  chosen: FabricId | null;
  /** Reads the fabric of the strip from the photograph. */
  onRead: ReadStrip;
  onChoose: (fabric: FabricId | null) => void;
  onClose: () => void;
}

export function FabricForBand({ words, seen, chosen, onRead, onChoose, onClose }: Props) {
  const say = useSay();
  const write = useWrite();
  const store = useAppStore();
  const fabrics = useApp((app) => app.project.fabrics);
  const sorted = useMemo(() => byLikeness(fabrics, seen), [fabrics, seen]);
  const [run, problems] = useRun();
  const first = useRef<HTMLButtonElement>(null);
  useEscape(onClose);
  useEffect(() => first.current?.focus(), []);
  const colour = seenColour(seen);
  const photographed = useFabricOfStrip(onRead, onChoose);
  const makePlain = () => {
    const name = capital(write(nameFor('plain', colour, null)));
    if (!run(addFabric({ name, colour, cloth: { kind: 'plain' }, background: false }))) return;
    onChoose(store.getState().project.fabrics.at(-1)!.id);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a choice, no fields of a form
    <div className="fabric-for-band" role="group" aria-label={words}>
      <p className="quiet">
        <span className="seen-colour" style={{ background: colour }} aria-hidden />{' '}
        {say('As seen. The fabric most like it comes first.')}
      </p>
      <Toolbar className="fabrics-for-band" aria-label={say('Fabrics')}>
        {sorted.map((fabric, at) => (
          <button
            key={fabric.id}
            ref={at === 0 ? first : undefined}
            type="button"
            className="option"
            aria-pressed={fabric.id === chosen}
            onClick={() => onChoose(fabric.id)}
          >
            <Swatch fabric={fabric} size={22} /> <bdi>{fabric.name}</bdi>
          </button>
        ))}
      </Toolbar>
      <div className="row">
        <FabricOfStrip making={photographed} />
        <button type="button" className="button" onClick={makePlain}>
          <Plus size={16} aria-hidden /> {say('Make a plain fabric of its colour')}
        </button>
        <button type="button" className="button" onClick={() => onChoose(null)}>
          {say('Not known')}
        </button>
        <button type="button" className="button" data-always onClick={onClose}>
          {say('Close')}
          <Apart of={words} />
        </button>
      </div>
      <Complaint problems={photographed.problems.length > 0 ? photographed.problems : problems} />
    </div>
  );
}
