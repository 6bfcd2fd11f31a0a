// The strips that are left beside the sets, at the scale of the sets: to be carried into a set, or laid on the open one by a press.
import { memo, type PointerEvent, type ReactNode } from 'react';
import { type LeftOver, leftOvers } from '../../../cutting/sets/leftOvers';
import { stripsUnused } from '../../../cutting/sets/stripsUnused';
import type { StripSource } from '../../../editing/commands/sets/carryStrip';
import { counted } from '../../../model/phrase';
import type { Fabric, FabricId, Project } from '../../../model/project';
import type { Inches } from '../../../model/units';
import { useAppStore } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { clothFill } from '../../wall/cloth';
import { useSay } from '../../words';
import { pieceSize } from './pieceSize';

/** Inches of the length of a left-over that are shown. */
const SHOWN: Inches = 4;

interface Props {
  /** The quilt as it would be while a strip is carried. */
  project: Project;
  fabrics: ReadonlyMap<FabricId, Fabric>;
  /** The letter of the open set, on which a press lays a strip. */
  openSet: string | null;
  over: boolean;
  tabAt: number;
  onPress: (event: PointerEvent, source: StripSource) => void;
  children?: ReactNode;
}

/** The left-over as what a hand takes up. */
export function sourceOf({ fabric, width, length }: LeftOver): StripSource {
  return { kind: 'left', strip: { fabric, width }, length };
}

export const LeftOvers = memo(function LeftOvers(props: Props) {
  const say = useSay();
  const store = useAppStore();
  const { project, fabrics, openSet } = props;
  const rows = leftOvers(project);
  const count = rows.reduce((sum, row) => sum + row.count, 0);
  const missing = stripsUnused(project).filter((row) => row.left < 0);
  const none = project.stripsOnHand.every((row) => row.count === 0);
  return (
    <section
      className={props.over ? 'lay-left over' : 'lay-left'}
      aria-label={say('Left over')}
      data-lay-left
      data-lay-scroll
    >
      <h3>{say('Left over')}</h3>
      <p className="lay-hint">
        {none
          ? say('No strips on hand.')
          : count === 0
            ? say('Every strip on hand is used.')
            : say(counted(count, '1 strip.', '{count} strips.'))}{' '}
        {count > 0
          ? openSet === null
            ? say('Drag one into a set.')
            : say('Press one to add it to set {set}.', { set: openSet })
          : null}
      </p>
      {none ? (
        <button type="button" className="button" onClick={() => store.getState().goTo('fabrics')}>
          {say('Add strips')}
        </button>
      ) : null}
      {props.children}
      <ul>
        {rows.map((row, at) => (
          <li key={`${row.fabric} ${row.width} ${row.length}`}>
            <LeftRow {...props} row={row} at={at} fabric={fabrics.get(row.fabric)} />
          </li>
        ))}
      </ul>
      {missing.length > 0 ? (
        <ul className="lay-missing">
          {missing.map((row) => (
            <li key={`${row.fabric} ${row.width}`}>
              <Fractions
                text={say('{count} more of {name}, {width}, in sets than on hand', {
                  count: -row.left,
                  name: fabrics.get(row.fabric)?.name ?? '',
                  width: { inches: row.width },
                })}
              />
            </li>
          ))}
        </ul>
      ) : null}
    </section>
  );
});

function LeftRow(props: Props & { row: LeftOver; at: number; fabric: Fabric | undefined }) {
  const say = useSay();
  const { row, at, fabric } = props;
  const values = {
    name: fabric?.name ?? '',
    width: { inches: row.width },
    length: { inches: row.length },
    count: row.count,
  };
  return (
    <button
      type="button"
      className="lay-row"
      tabIndex={at === props.tabAt ? 0 : -1}
      data-lay-row={at}
      aria-label={say('{name}, cut {width}, {length} long: {count} left', values)}
      title={fabric?.name}
      onPointerDown={(event) => props.onPress(event, sourceOf(row))}
    >
      <svg
        viewBox={`0 0 ${SHOWN} ${row.width}`}
        style={pieceSize({ high: row.width, wide: SHOWN })}
        className="lay-piece"
        aria-hidden
      >
        <rect width={SHOWN} height={row.width} fill={fabric ? clothFill(fabric) : 'none'} />
        <rect className="set-edge" width={SHOWN} height={row.width} />
      </svg>
      <span className="lay-row-words">
        <Fractions text={say('{count} × {width} · {length}', values)} />
      </span>
    </button>
  );
}
