// The head of the set that is open in the panel, with the way to close it, which Escape takes too.
import { X } from 'lucide-react';
import type { StripSet } from '../../../model/project';
import { useAppStore } from '../../app';
import { useEscape } from '../../useEscape';
import { useSay } from '../../words';

export function OpenSetHead({ set }: { set: StripSet }) {
  const say = useSay();
  const store = useAppStore();
  const close = () => store.getState().lay({ set: null });
  useEscape(close);
  return (
    <div className="spread">
      <h3>{say('Set {set}', { set: set.label })}</h3>
      <button type="button" className="button bare" onClick={close}>
        <X size={16} aria-hidden /> {say('Close')}
      </button>
    </div>
  );
}
