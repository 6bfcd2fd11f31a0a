// The panel of a block that is shown by its picture: why its wedges cannot be changed, what was read of them, and how it becomes a
// pieced block.
import { makePieced } from '../../../../editing/pictured/makePieced';
import type { PicturedBlock } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { useSay } from '../../../words';
import { shownWords } from '../blockWords';

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
      <ul>
        {block.wedges.map((wedge, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a place is its index
          <li key={place}>
            {say('Place {place}: {wedge}', { place: place + 1, wedge: shownWords(project, wedge) })}
          </li>
        ))}
      </ul>
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
