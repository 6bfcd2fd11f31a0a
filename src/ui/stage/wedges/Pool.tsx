// The wedges of one set and tip as small pictures: used ones faded with the number of their block, left ones clear. A press shows
// on the wall where they are.
import type { LedgerRow } from '../../../cutting/wedges/ledger';
import type { WedgeUses } from '../../../cutting/wedges/uses';
import type { Tip } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { WedgePicture } from '../../steps/blocks/WedgePicture';
import { TipSign } from '../../steps/wedges/TipSign';
import { useSay } from '../../words';
import { lightWedges, spotId, whereWords } from './lightWedges';

/** Screen pixels. */
const HIGH = 36;

export function Pool({ row, tip, uses }: { row: LedgerRow; tip: Tip; uses: WedgeUses }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const { set } = row;
  const id = spotId(set.id, tip);
  const lit = useApp((app) => app.spot?.id === id);
  const used = uses(set.id, tip);
  const values = { set: set.label, there: row.available[tip], used: row.used[tip], left: row.left[tip] };
  const name = tip === 'up' ? 'Set {set}, tip up: {there} cut, {used} used, {left} left; show them on the wall' : 'Set {set}, tip down: {there} cut, {used} used, {left} left; show them on the wall'; // biome-ignore format: short
  const press = () => {
    const { showSpot, announce, project: now } = store.getState();
    showSpot(lit ? null : lightWedges(now, set.id, tip));
    if (!lit) announce(whereWords(now, set.id, tip));
  };
  return (
    <button type="button" className="pool" aria-pressed={lit} aria-label={say(name, values)} onClick={press}>
      <span className="pool-words">
        <TipSign tip={tip} />
        {say(tip === 'up' ? 'Tip up' : 'Tip down')}
        <span className="pool-counts">{say('{used} used, {left} left', values)}</span>
      </span>
      <span className="pool-wedges" aria-hidden>
        {Array.from({ length: row.available[tip] }, (_, at) => {
          const use = used[at];
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: wedges of one set and tip are alike
            <span key={at} className={use ? 'pool-wedge used' : 'pool-wedge'}>
              <WedgePicture wedge={{ set: set.id, tip }} height={HIGH} />
              {use?.number ?? '–'}
            </span>
          );
        })}
      </span>
      {lit ? <span className="pool-where">{say(whereWords(project, set.id, tip))}</span> : null}
    </button>
  );
}
