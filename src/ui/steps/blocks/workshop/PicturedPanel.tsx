// The panel of a block that is shown by its picture: why its wedges cannot be changed, what was read of them, where it is put right, and
// how it becomes a pieced block.
import { RotateCw } from 'lucide-react';
import { makePieced } from '../../../../editing/pictured/makePieced';
import { turnReading } from '../../../../editing/pictured/putRight';
import type { PicturedBlock, ShownBand } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { useSay } from '../../../words';
import { shownWords } from '../blockWords';
import { ShownBandField } from './ShownBandField';

const NOTHING_READ: readonly ShownBand[] = [{ fabric: null, width: 0, sure: 0 }];

export function PicturedPanel({ block }: { block: PicturedBlock }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  return (
    <section aria-labelledby="picture-title">
      <h3 id="picture-title">{say('Shown by its picture')}</h3>
      <p>
        {say('It is sewn already, so no wedges can be chosen for it. It turns and moves like any block.')}
      </p>
      <ul className="shown-wedges">
        {block.wedges.map((wedge, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a place is its index
          <li key={place}>
            {say('Place {place}: {wedge}', { place: place + 1, wedge: shownWords(project, wedge) })}
          </li>
        ))}
      </ul>
      <details>
        <summary>{say('Put right what was read')}</summary>
        <ol className="stack" aria-label={say('Fabrics of the wedges, clockwise from the top')}>
          {block.wedges.map(({ bands }, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a place is its index
            <li key={place}>
              {/* The rim of a wedge of which nothing was read can be told too. */}
              {(bands.length > 0 ? bands : NOTHING_READ).map((band, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a band is its index
                <ShownBandField key={at} block={block} place={place} at={at} band={band} />
              ))}
            </li>
          ))}
        </ol>
        <button
          type="button"
          className="button"
          onClick={() => run(turnReading(store.getState().project, block.id, 1))}
        >
          <RotateCw size={16} aria-hidden /> {say('Turn what was read, not the picture')}
        </button>
      </details>
      <div className="row">
        <button
          type="button"
          className="button"
          onClick={() => run(makePieced(store.getState().project, [block.id]))}
        >
          {say('Make it a pieced block')}
        </button>
      </div>
      <Complaint problems={problems} />
    </section>
  );
}
