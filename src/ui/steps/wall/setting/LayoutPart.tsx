// The layout: straight or on point, fabrics of the setting triangles, and plain squares between the blocks.

import { settingSquares } from '../../../../cutting/yardage/triangleSquares';
import { changeSettingTriangles, layPlain, setLayout } from '../../../../editing/commands/layout';
import type { Project } from '../../../../model/project';
import { useApp } from '../../../app';
import { Choice } from '../../../fields/Choice';
import { Complaint, useRun } from '../../../fields/Complaint';
import { FabricPicker } from '../../../fields/FabricPicker';
import { Fractions } from '../../../fields/Fractions';
import { useSay } from '../../../words';
import { Fold } from './Fold';

type PlainCells = 'none' | 'first' | 'second';

export function LayoutPart() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const { layout, plain, cornerFabric } = project.setting;
  const [run, problems] = useRun();
  const onPoint = layout.kind === 'onPoint';
  const plainCells: PlainCells = plain?.cells ?? 'none';
  return (
    <Fold title="Layout" now={say(layoutWords(project))}>
      <Choice
        label="The blocks hang"
        value={layout.kind}
        options={[
          { value: 'straight', label: 'Straight' },
          { value: 'onPoint', label: 'On point' },
        ]}
        onChange={(kind) => run(setLayout(kind))}
      />
      {layout.kind === 'onPoint' ? (
        <>
          <FabricPicker
            label="Side triangles"
            value={layout.sides}
            onChange={(fabric) => run(changeSettingTriangles('sides', fabric))}
          />
          <FabricPicker
            label="Setting corners"
            value={layout.corners}
            onChange={(fabric) => run(changeSettingTriangles('corners', fabric))}
          />
          <TriangleSizes project={project} />
        </>
      ) : null}
      <Choice
        label="Plain squares"
        value={plainCells}
        options={[
          { value: 'none', label: 'None' },
          { value: 'second', label: onPoint ? 'In between' : 'Alternate, block first' },
          { value: 'first', label: onPoint ? 'Along the edge' : 'Alternate, plain square first' },
        ]}
        onChange={(cells) =>
          run(layPlain(cells === 'none' ? null : { fabric: plain?.fabric ?? cornerFabric, cells }))
        }
      />
      {plain ? (
        <FabricPicker
          label="Fabric of the plain squares"
          value={plain.fabric}
          onChange={(fabric) => run(layPlain({ ...plain, fabric }))}
        />
      ) : null}
      <Complaint problems={problems} />
    </Fold>
  );
}

function layoutWords({ setting: { layout, plain } }: Project): string {
  if (layout.kind === 'onPoint') return plain ? 'on point with plain squares' : 'on point';
  return plain ? 'straight with plain squares' : 'straight';
}

function TriangleSizes({ project }: { project: Project }) {
  const say = useSay();
  const { side, corner } = settingSquares(project.wedge, project.preferences.unit);
  return (
    <p className="quiet">
      <Fractions
        text={say(
          'Squares of {side} quartered make the side triangles, squares of {corner} halved the corners, so the straight of the fabric lies along the edge.',
          { side: { inches: side }, corner: { inches: corner } },
        )}
      />
    </p>
  );
}
