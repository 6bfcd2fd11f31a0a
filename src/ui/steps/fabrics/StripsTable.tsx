// What a plan cuts: strips by fabric and width, with one length of cloth for each fabric in the last column.
import type { Fabric, FabricId } from '../../../model/project';
import type { Inches } from '../../../model/units';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';

interface Props {
  fabrics: readonly Fabric[];
  strips: readonly { readonly fabric: FabricId; readonly width: Inches; readonly count: number }[];
  /** The last column: its heading, and the length of each fabric; one not listed has none. */
  last: string;
  lengths: readonly { readonly fabric: FabricId; readonly inches: Inches }[];
}

export function StripsTable({ fabrics, strips, last, lengths }: Props) {
  const say = useSay();
  const widths = [...new Set(strips.map((row) => row.width))].sort((one, other) => one - other);
  const countOf = (fabric: FabricId, width: Inches) =>
    strips.reduce((sum, row) => sum + (row.fabric === fabric && row.width === width ? row.count : 0), 0);
  const length = (inches: Inches) => <Fractions text={say('{length}', { length: { inches } })} />;
  return (
    <table className="fab-strips fab-plan">
      <thead>
        <tr>
          <th scope="col">{say('Fabric')}</th>
          {widths.map((width) => (
            <th key={width} scope="col">
              {length(width)}
            </th>
          ))}
          <th scope="col">{say(last)}</th>
        </tr>
      </thead>
      <tbody>
        {fabrics.map((fabric) => (
          <tr key={fabric.id}>
            <th scope="row">
              <bdi className="one-line">{fabric.name}</bdi>
            </th>
            {widths.map((width) => (
              <td key={width}>{countOf(fabric.id, width)}</td>
            ))}
            <td>{length(lengths.find((row) => row.fabric === fabric.id)?.inches ?? 0)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
