// What lies in one kit: the labelled strips or the length of each fabric, all at one scale.
import type { KitFabric } from '../../../cutting/kits/kits';
import { fatQuarter } from '../../../cutting/yardage/fatQuarter';
import { sellingUnit } from '../../../model/buying';
import { counted } from '../../../model/phrase';
import type { Project } from '../../../model/project';
import type { Inches } from '../../../model/units';
import { useAppStore } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { inKit } from '../../steps/finishing/cloth/kitWords';
import { useKits } from '../../steps/finishing/cloth/useKits';
import { clothFill } from '../../wall/cloth';
import { useSay } from '../../words';
import { useBox } from './useBox';

/** Pixels beside the cloth: edges of the card, and the labels. */
const BESIDE = 120;
const MOST = 14;

export function KitStage() {
  const say = useSay();
  const { project, made } = useKits();
  const [frame, box] = useBox<HTMLDivElement>();
  const longest = Math.max(
    project.preferences.usableWidth,
    ...made.fabrics.flatMap((one) => one.strips.map((strips) => strips.length)),
  );
  const scale = Math.min(MOST, Math.max(0, box.width - BESIDE) / longest);
  return (
    <div ref={frame} className="cloth-cards">
      <p className="stage-note">
        {say(counted(made.fabrics.length, 'One kit holds 1 fabric.', 'One kit holds {count} fabrics.'))}
      </p>
      {scale <= 0
        ? null
        : made.fabrics.map((one) => (
            <KitCard key={one.fabric.id} one={one} project={project} scale={scale} />
          ))}
    </div>
  );
}

function KitCard({ one, project, scale }: { one: KitFabric; project: Project; scale: number }) {
  const say = useSay();
  const { light } = useAppStore().getState();
  const unit = sellingUnit(project);
  const asStrips = one.strips.length > 0;
  return (
    <figure
      className="stage-card cloth-card"
      onPointerEnter={() => light(one.fabric.id)}
      onPointerLeave={() => light(null)}
    >
      <figcaption className="spread">
        <span>
          <span className="number">{one.number}</span> <bdi>{one.fabric.name}</bdi>
        </span>
        <span className="number">
          <Fractions text={say(inKit(one, asStrips, unit))} />
        </span>
      </figcaption>
      {asStrips ? (
        <ul className="kit-pile">
          {one.strips.map((strips) => (
            <li key={strips.label}>
              <span className="number">{strips.label}</span>
              <Cloth one={one} width={strips.length} height={strips.width} scale={scale} />
              <span>× {strips.count}</span>
            </li>
          ))}
        </ul>
      ) : (
        lengthsOf(one, project).map(({ width, height, key }) => (
          <Cloth key={key} one={one} width={width} height={height} scale={scale} />
        ))
      )}
    </figure>
  );
}

/** The cloth of one kit where it is not cut into strips: one length, or its fat quarters. */
function lengthsOf(one: KitFabric, project: Project): { width: Inches; height: Inches; key: number }[] {
  const { usableWidth } = project.preferences;
  if (one.fatQuarters === 0) return [{ width: usableWidth, height: one.inches, key: 0 }];
  const { across, along } = fatQuarter(project);
  return Array.from({ length: one.fatQuarters }, (_, key) => ({ width: across, height: along, key }));
}

function Cloth(props: { one: KitFabric; width: Inches; height: Inches; scale: number }) {
  const { one, width, height, scale } = props;
  return (
    <svg
      className="kit-cloth"
      width={width * scale}
      height={Math.max(4, height * scale)}
      viewBox={`0 0 ${width} ${height}`}
      preserveAspectRatio="none"
      aria-hidden
    >
      <rect width={width} height={height} fill={clothFill(one.fabric)} />
      <rect className="cloth-cut" width={width} height={height} />
    </svg>
  );
}
