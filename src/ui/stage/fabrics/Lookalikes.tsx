// Look-alikes in pairs: both fabrics edge to edge, as the eye compares best, and in words how near they are.
import { scaleThreshold } from 'd3-scale';
import { useState } from 'react';
import type { LookalikePair } from '../../../cloth/lookalikes';
import { counted, phrase } from '../../../model/phrase';
import type { Fabric } from '../../../model/project';
import { figureOf } from '../../../model/words/figure';
import { useApp, useAppStore } from '../../app';
import { clothFill } from '../../wall/cloth';
import { useSay } from '../../words';
import { focusForm } from './focusForm';
import { useLookalikes } from './useLookalikes';

/** Pairs that are shown at first, and that come with each press. */
const AT_ONCE = 24;
/** Side of a fabric in the picture of a pair, inches, and its pixels to the inch. */
const SIDE = 1.2;
const SCALE = 48;

/** How near, by the likeness: it is 0.9 at a fifth of the limit and 0.5 at half of it (likenessAt). */
const NEARNESS = scaleThreshold<number, string>(
  [0.5, 0.9],
  ['Told apart close by, hardly from across the room', 'Hard to tell apart', 'The same to the eye'],
);

export function Lookalikes() {
  const say = useSay();
  const fabrics = useApp((app) => app.project.fabrics);
  const limit = useApp((app) => app.project.preferences.lookalikes);
  const pairs = useLookalikes(fabrics, limit);
  const [count, setCount] = useState(AT_ONCE);
  if (!pairs || pairs.length === 0) return null;
  return (
    <details className="lookalikes">
      <summary>{say(counted(pairs.length, 'Look-alikes: 1 pair', 'Look-alikes: {count} pairs'))}</summary>
      <ul>
        {pairs.slice(0, count).map((pair) => (
          <Pair key={`${pair.one.id} ${pair.other.id}`} pair={pair} limit={limit} />
        ))}
      </ul>
      {pairs.length > count ? (
        <button type="button" className="button" onClick={() => setCount(count + AT_ONCE)}>
          {say(phrase('Show more: {count} pairs left', { count: pairs.length - count }))}
        </button>
      ) : null}
    </details>
  );
}

function Pair({ pair, limit }: { pair: LookalikePair; limit: number }) {
  const say = useSay();
  const { one, other } = pair;
  return (
    <li>
      <svg width={2 * SIDE * SCALE} height={SIDE * SCALE} viewBox={`0 0 ${2 * SIDE} ${SIDE}`} aria-hidden>
        <g className="seen">
          <rect width={SIDE} height={SIDE} fill={clothFill(one)} />
          <rect x={SIDE} width={SIDE} height={SIDE} fill={clothFill(other)} />
        </g>
      </svg>
      <div>
        <div className="pair-names">
          <OpenFabric fabric={one} />
          <OpenFabric fabric={other} />
        </div>
        <p>
          {say(NEARNESS(pair.likeness))}{' '}
          <span className="apart-by">
            {say('difference {difference}, limit {limit}', {
              difference: figureOf(pair.distance, 1),
              limit,
            })}
          </span>
        </p>
      </div>
    </li>
  );
}

/** The name of a fabric: pointing at it lights it on the wall, a press opens it. */
function OpenFabric({ fabric }: { fabric: Fabric }) {
  const say = useSay();
  const { light, lay } = useAppStore().getState();
  return (
    <button
      type="button"
      className="button"
      aria-label={say('Open {name}', { name: fabric.name })}
      onPointerEnter={() => light(fabric.id)}
      onPointerLeave={() => light(null)}
      onFocus={() => light(fabric.id)}
      onBlur={() => light(null)}
      onClick={() => {
        lay({ fabric: fabric.id });
        focusForm();
      }}
    >
      <bdi>{fabric.name}</bdi>
    </button>
  );
}
