// A table of the strips of a plan, by fabric and width, with one more figure for each fabric in the last column.
import type { Fabric, FabricId } from '../../../../model/project';
import type { Inches } from '../../../../model/units';
import { Fractions } from '../../../fields/Fractions';
import { useSay } from '../../../words';

interface Props {
  name: string;
  fabrics: readonly Fabric[];
  strips: readonly { readonly fabric: FabricId; readonly width: Inches; readonly count: number }[];
  /** Heading of the last column, and its text for each fabric; no last column unless given. */
  last?: string;
  lastOf?: (fabric: FabricId) => string;
}

export function StripsTable({ name, fabrics, strips, last, lastOf }: Props) {
  const say = useSay();
  const widths = [...new Set(strips.map((row) => row.width))].sort((one, other) => one - other);
  const countOf = (fabric: FabricId, width: Inches) =>
    strips.reduce((sum, row) => sum + (row.fabric === fabric && row.width === width ? row.count : 0), 0);
  const length = (inches: Inches) => <Fractions text={say('{length}', { length: { inches } })} />;
  return (
    <table className="fab-strips fab-plan" aria-label={name}>
      <thead>
        <tr>
          <th scope="col">{say('Fabric')}</th>
          {widths.map((width) => (
            <th key={width} scope="col">
              {length(width)}
            </th>
          ))}
          {last ? <th scope="col">{say(last)}</th> : null}
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
            {lastOf ? (
              <td className="nowrap">
                <Fractions text={lastOf(fabric.id)} />
              </td>
            ) : null}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
