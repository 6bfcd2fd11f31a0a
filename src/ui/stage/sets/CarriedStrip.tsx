// The strip under the hand, with words on what putting it down here would give.
import { findSet } from '../../../model/find';
import { useApp } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { clothFill } from '../../wall/cloth';
import { useSay } from '../../words';
import type { CarriedStrip as Carried } from './carryRules';
import type { Ghost } from './ghost';
import { pieceSize } from './pieceSize';

const SHOWN = 4;

export function CarriedStrip({ carried, ghost }: { carried: Carried; ghost: Ghost | null }) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const { from, hand } = carried;
  if (hand === null) return null;
  const strip = from.kind === 'left' ? from.strip : findSet(project, from.set)?.strips[from.at];
  const fabric = project.fabrics.find(({ id }) => id === strip?.fabric);
  if (!strip || !fabric) return null;
  return (
    <div className="lay-carried" style={{ left: hand.x, top: hand.y }} aria-hidden>
      <svg
        viewBox={`0 0 ${SHOWN} ${strip.width}`}
        style={pieceSize({ high: strip.width, wide: SHOWN })}
        className="lay-piece"
        aria-hidden
      >
        <rect width={SHOWN} height={strip.width} fill={clothFill(fabric)} />
      </svg>
      {ghost ? (
        <div className={ghost.refused ? 'lay-says refused' : 'lay-says'}>
          {ghost.words.map((words) => (
            <p key={say(words)}>
              <Fractions text={say(words)} />
            </p>
          ))}
        </div>
      ) : null}
    </div>
  );
}
