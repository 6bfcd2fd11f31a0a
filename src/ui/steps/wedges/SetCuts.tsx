// The row of one strip set in the wedges step: its diagram, and the wedges it gives, used and left. It opens for counting.
import { memo } from 'react';
import { heightShort } from '../../../geometry/stripSet';
import { useSay } from '../../words';
import { heightWords } from '../sets/heightWords';
import { SetItem, type SetItemProps } from '../sets/SetItem';
import { CuttingDiagram } from './CuttingDiagram';
import { OpenCuts } from './OpenCuts';

export const SetCuts = memo(function SetCuts(props: SetItemProps) {
  const say = useSay();
  const { row, wedge } = props;
  const { set, height, available, left } = row;
  const short = heightShort(height, wedge) > 0;
  const counts = short
    ? say(heightWords(height, wedge))
    : say('Up {up}, {upLeft} left · down {down}, {downLeft} left', {
        up: available.up,
        upLeft: left.up,
        down: available.down,
        downLeft: left.down,
      });
  return (
    <SetItem
      {...props}
      name={say('Set {set}: {counts}', { set: set.label, counts })}
      line={counts}
      over={short ? null : <CuttingDiagram set={set} wedge={wedge} />}
    >
      <OpenCuts row={row} />
    </SetItem>
  );
});
