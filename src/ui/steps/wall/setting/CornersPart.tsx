// Fabrics of the corner triangles: one for the quilt, or two by a rule. The values of the two fabrics decide which is the darker.
import { clothValue } from '../../../../drawing/shares';
import { changeCornerRule } from '../../../../editing/commands/layout';
import { changeCorners } from '../../../../editing/commands/setting';
import { findFabric } from '../../../../model/find';
import type { FabricId, Project } from '../../../../model/project';
import { useApp } from '../../../app';
import { Choice } from '../../../fields/Choice';
import { Complaint, useRun } from '../../../fields/Complaint';
import { FabricPicker } from '../../../fields/FabricPicker';
import { useSay } from '../../../words';
import { Fold } from './Fold';

type Rule = 'one' | 'darkOutside' | 'lightOutside' | 'checkerboard';

const RULE_WORDS: Readonly<Record<Rule, string>> = {
  one: 'one fabric',
  darkOutside: 'dark outside',
  lightOutside: 'light outside',
  checkerboard: 'checkerboard',
};

export function CornersPart() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const { cornerFabric, cornerRule } = project.setting;
  const [run, problems] = useRun();
  const rule = ruleOf(project);
  const choose = (next: Rule) => {
    if (next === 'one') return run(changeCornerRule(null));
    const other = cornerRule?.fabric ?? farthestInValue(project, cornerFabric);
    if (next === 'checkerboard') return run(changeCornerRule({ kind: 'checkerboard', fabric: other }));
    const swapped = isDarker(project, other, cornerFabric) !== (next === 'darkOutside');
    const [outside, inside] = swapped ? [cornerFabric, other] : [other, cornerFabric];
    return run(changeCornerRule({ kind: 'edge', fabric: outside }, inside));
  };
  const name = findFabric(project, cornerFabric)?.name ?? '';
  return (
    <Fold title="Corner triangles" now={rule === 'one' ? name : say(RULE_WORDS[rule])}>
      <Choice
        label="Their fabric"
        value={rule}
        options={[
          { value: 'one', label: 'One fabric' },
          { value: 'darkOutside', label: 'Dark outside' },
          { value: 'lightOutside', label: 'Light outside' },
          { value: 'checkerboard', label: 'Checkerboard' },
        ]}
        onChange={choose}
      />
      <FabricPicker
        label={rule === 'one' ? 'Corner triangles' : rule === 'checkerboard' ? 'First fabric' : 'Inside'}
        value={cornerFabric}
        onChange={(fabric) => run(changeCorners(fabric))}
      />
      {cornerRule ? (
        <>
          <FabricPicker
            label={rule === 'checkerboard' ? 'Second fabric' : 'In the blocks along the edge'}
            value={cornerRule.fabric}
            onChange={(fabric) => run(changeCornerRule({ ...cornerRule, fabric }))}
          />
          <p className="quiet">
            {say(
              'The rule follows where a block hangs. Blocks with corners of their own, or sewn on, keep theirs.',
            )}
          </p>
        </>
      ) : null}
      <Complaint problems={problems} />
    </Fold>
  );
}

function ruleOf(project: Project): Rule {
  const { cornerFabric, cornerRule } = project.setting;
  if (cornerRule === null) return 'one';
  if (cornerRule.kind === 'checkerboard') return 'checkerboard';
  return isDarker(project, cornerRule.fabric, cornerFabric) ? 'darkOutside' : 'lightOutside';
}

function lightnessOf(project: Project, id: FabricId): number {
  const fabric = findFabric(project, id);
  return fabric ? clothValue(fabric) : 50;
}

function isDarker(project: Project, one: FabricId, other: FabricId): boolean {
  return lightnessOf(project, one) < lightnessOf(project, other);
}

/** The first choice for a second corner fabric: the fabric whose value differs most from `from`, but not the sashing's. */
function farthestInValue(project: Project, from: FabricId): FabricId {
  const value = lightnessOf(project, from);
  const [farthest] = project.fabrics
    .filter((fabric) => fabric.id !== project.setting.sashing.fabric)
    .toSorted((one, other) => Math.abs(clothValue(other) - value) - Math.abs(clothValue(one) - value));
  return farthest?.id ?? from;
}
