// One line of the grid: a fabric, the length of its strips, and their numbers by width.
import { memo } from 'react';
import type { Fabric } from '../../../../model/project';
import type { Inches } from '../../../../model/units';
import { useAppStore } from '../../../app';
import { Swatch } from '../../../fields/Swatch';
import { useSay } from '../../../words';
import { CountCell, LengthCell, type Place } from './GridCell';
import type { GridActions } from './useStripGrid';

interface Props {
  line: number;
  fabric: Fabric;
  length: Inches;
  widths: readonly Inches[];
  counts: readonly number[];
  /** By width, how many strips the sets want beyond those on hand. */
  missing: readonly number[];
  /** Strips in the line, with the number that is being typed. */
  sum: number;
  actions: GridActions;
  onLive: (place: Place, count: number | null) => void;
}

export const GridLine = memo(function GridLine(props: Props) {
  const { line, fabric, length, widths, counts, missing, sum, actions, onLive } = props;
  const say = useSay();
  const store = useAppStore();
  const light = () => store.getState().light(fabric.id);
  const own = [{ fabric: fabric.id, length }];
  return (
    <tr onPointerEnter={light} onFocus={light}>
      <th scope="row" className="grid-name" title={fabric.name}>
        <span>
          <Swatch fabric={fabric} size={26} inches={2} />
          <bdi>{fabric.name}</bdi>
        </span>
      </th>
      <td>
        <LengthCell
          of="length"
          line={line}
          column={0}
          name={say('{name}: length of the strips', { name: fabric.name })}
          value={length}
          onLength={(to) => actions.changeLengths(own, to)}
        />
      </td>
      {widths.map((width, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a column keeps its place while its width is changed
        <td key={index}>
          <CountCell
            line={line}
            column={index + 1}
            name={say('{name}: strips {width} wide, {length} long', {
              name: fabric.name,
              width: { inches: width },
              length: { inches: length },
            })}
            count={counts[index]!}
            onCount={(count) => actions.enter(own, width, count)}
            onLive={onLive}
          />
          {missing[index]! > 0 ? (
            <span className="grid-missing">{say('{count} more wanted', { count: missing[index]! })}</span>
          ) : null}
        </td>
      ))}
      <td />
      <td className="grid-sum">{sum}</td>
    </tr>
  );
}, sameLine);

/** Whether nothing that a line shows has changed; lists count by what is in them. */
function sameLine(before: Props, after: Props): boolean {
  return (Object.keys(after) as (keyof Props)[]).every((key) => {
    const [was, is] = [before[key], after[key]];
    if (!Array.isArray(was) || !Array.isArray(is)) return was === is;
    return was.length === is.length && was.every((one, at) => one === is[at]);
  });
}
