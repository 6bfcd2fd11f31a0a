// The row of one strip set in the sets step: its height, compared with the height needed, and the wedges it gives.
import { Lock, TriangleAlert } from 'lucide-react';
import { memo } from 'react';
import { heightShort } from '../../../geometry/stripSet';
import { useSay } from '../../words';
import { heightWords } from './heightWords';
import { OpenSet } from './OpenSet';
import { SetItem, type SetItemProps } from './SetItem';
import { SewingArrows } from './SewingArrows';
import { SET_PROGRESS_NAMES } from './setNames';

export const SetRow = memo(function SetRow(props: SetItemProps) {
  const say = useSay();
  const { row, wedge, open } = props;
  const { set, height, available } = row;
  const empty = set.strips.length === 0;
  const short = heightShort(height, wedge) > 0;
  const words = heightWords(height, wedge);
  return (
    <SetItem
      {...props}
      name={say('Set {set}: {height}; {progress}', {
        set: set.label,
        height: empty ? say('no strips yet') : words,
        progress: say(SET_PROGRESS_NAMES[set.progress]),
      })}
      line={[
        empty ? say('No strips yet') : say(words),
        ...(short ? [] : [say('{up} up, {down} down', { up: available.up, down: available.down })]),
      ].join(' · ')}
      signs={
        <>
          {short ? <TriangleAlert size={14} aria-hidden /> : null}
          {set.locked ? <Lock size={13} aria-hidden /> : null}
        </>
      }
      over={open ? <SewingArrows set={set} seam={wedge.seam} /> : null}
    >
      <OpenSet set={set} />
    </SetItem>
  );
});
