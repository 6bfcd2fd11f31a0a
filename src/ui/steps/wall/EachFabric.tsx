// The spread of each fabric over the top: first the fabric that stands out most, then the others by area. An open row lights the
// fabric's pieces on the wall, marks its centre, and compares its spread with chance.
import { useEffect, useId } from 'react';
import type { FabricSpread } from '../../../balance/evenness/fabricSpread';
import { dominanceWords, spreadWords } from '../../../balance/evenness/fabricWords';
import type { Point } from '../../../geometry/point';
import { findFabric } from '../../../model/find';
import type { FabricId } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { Swatch } from '../../fields/Swatch';
import { useAnalysis } from '../../useAnalysis';
import { useEscape } from '../../useEscape';
import { useSay } from '../../words';
import { Fold } from './setting/Fold';

const spotOf = (fabric: FabricId) => `fabric:${fabric}`;

export function EachFabric() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const spot = useApp((app) => app.spot?.id ?? null);
  const { balance } = useAnalysis(project);
  const middle = balance?.wholeTop.middle;
  const fabrics = inOrder(balance?.fabrics ?? [], balance?.dominant ?? null);
  const shown = fabrics.find((one) => spotOf(one.fabric) === spot)?.fabric ?? null;
  useEffect(() => {
    if (shown === null) return;
    store.getState().light(shown);
    return () => store.getState().light(null);
  }, [store, shown]);
  if (!middle || fabrics.length === 0) return null;
  const first = findFabric(project, balance?.dominant ?? '');
  return (
    <Fold title="Each fabric" now={first ? say('{fabric} stands out most', { fabric: first.name }) : ''}>
      <ul className="each-fabric">
        {fabrics.map((one) => (
          <FabricRow
            key={one.fabric}
            spread={one}
            middle={middle}
            dominant={one.fabric === balance?.dominant}
            open={one.fabric === shown}
          />
        ))}
      </ul>
    </Fold>
  );
}

function inOrder(fabrics: readonly FabricSpread[], dominant: FabricId | null): FabricSpread[] {
  return fabrics.toSorted(
    (one, other) =>
      Number(other.fabric === dominant) - Number(one.fabric === dominant) || other.area - one.area,
  );
}

interface RowProps {
  spread: FabricSpread;
  middle: Point;
  dominant: boolean;
  open: boolean;
}

function FabricRow({ spread, middle, dominant, open }: RowProps) {
  const say = useSay();
  const store = useAppStore();
  const words = useId();
  const fabric = useApp((app) => findFabric(app.project, spread.fabric));
  useEscape(() => store.getState().showSpot(null), open);
  if (!fabric) return null;
  const said = [...(dominant ? [dominanceWords(spread)] : []), ...spreadWords(spread, middle)];
  const show = () => {
    const app = store.getState();
    app.showPreview(null);
    app.showFinding(null);
    if (open) return;
    app.showSpot({
      id: spotOf(fabric.id),
      marks: [{ kind: 'centre', of: 'fabric', at: spread.centre, middle }],
      blocks: [],
    });
  };
  return (
    <li>
      <button type="button" aria-expanded={open} aria-controls={words} onClick={show}>
        <Swatch fabric={fabric} size={26} />
        <span>
          <span className="name">{fabric.name}</span>
          {dominant ? <small className="quiet"> {say('stands out most, by area and contrast')}</small> : null}
        </span>
        <span className="figure">
          {say('{percent}%', { percent: Math.round(100 * spread.share) })}
          <span className="hidden-text"> {say('of the fabric in the wedges')}</span>
        </span>
      </button>
      <ul id={words} hidden={!open} className="quiet said-of">
        {open
          ? said.map((one) => (
              <li key={one.say}>
                <Fractions text={say(one)} />
              </li>
            ))
          : null}
      </ul>
    </li>
  );
}
