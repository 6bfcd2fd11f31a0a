// Sashing: where it lies, its width and fabric, cornerstones, and single gaps with widths of their own.
import { setCornerstones, setGap } from '../../../../editing/commands/edges';
import { changeSashing } from '../../../../editing/commands/setting';
import { findFabric } from '../../../../model/find';
import type { Project, Setting } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Choice } from '../../../fields/Choice';
import { Complaint, useRun } from '../../../fields/Complaint';
import { FabricPicker } from '../../../fields/FabricPicker';
import { LengthField } from '../../../fields/LengthField';
import { useSay } from '../../../words';
import { Fold } from './Fold';

type Where = Setting['sashing']['where'];

export function SashingPart() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const { sashing, layout } = project.setting;
  const [run, problems] = useRun();
  const onPoint = layout.kind === 'onPoint';
  const places: readonly { value: Where; label: string }[] = onPoint
    ? [
        { value: 'none', label: 'None' },
        { value: 'around', label: 'Round every block' },
      ]
    : [
        { value: 'none', label: 'None' },
        { value: 'between', label: 'Between' },
        { value: 'around', label: 'Between and around' },
      ];
  const stones = sashing.cornerstones;
  return (
    <Fold title="Sashing" now={sashingWords()}>
      <Choice
        label="Sashing"
        hideLabel
        value={sashing.where}
        options={places}
        onChange={(where) => run(changeSashing({ where }))}
      />
      {sashing.where === 'none' ? null : (
        <>
          <div className="width-and-cloth">
            <LengthField
              label="Finished width"
              value={sashing.width}
              least={0.25}
              most={12}
              onCommit={(width) => store.getState().run(changeSashing({ width }), 'here')}
            />
            <FabricPicker
              label="Sashing fabric"
              value={sashing.fabric}
              onChange={(fabric) => run(changeSashing({ fabric }))}
            />
          </div>
          <label className="tick">
            <input
              type="checkbox"
              checked={stones !== undefined}
              onChange={(event) =>
                run(setCornerstones(event.target.checked ? project.setting.cornerFabric : null))
              }
            />
            {say('Cornerstones where it crosses')}
          </label>
          {stones === undefined ? null : (
            <FabricPicker
              label="Fabric of the cornerstones"
              value={stones}
              onChange={(fabric) => run(setCornerstones(fabric))}
            />
          )}
          {onPoint ? null : <UnevenGaps project={project} />}
        </>
      )}
      <Complaint problems={problems} />
    </Fold>
  );

  function sashingWords(): string {
    if (sashing.where === 'none') return say('none');
    const name = findFabric(project, sashing.fabric)?.name ?? '';
    return say('{width}, {name}', { width: { inches: sashing.width }, name });
  }
}

const GAP_WORDS = { columnGaps: 'After column {after}', rowGaps: 'After row {after}' } as const;

/** Every gap between columns and rows with its width; a gap with a width of its own can get the common width again. */
function UnevenGaps({ project }: { project: Project }) {
  const say = useSay();
  const store = useAppStore();
  const { sashing } = project.setting;
  const { rows, columns } = project.wall;
  const gaps = (way: keyof typeof GAP_WORDS, count: number) =>
    Array.from({ length: count - 1 }, (_, index) => {
      const after = index + 1;
      const own = sashing[way]?.find((gap) => gap.after === after);
      const run = (width: number | null) => store.getState().run(setGap(way, after, width), 'here');
      return (
        <div key={`${way} ${after}`} className="gap">
          <LengthField
            label={say(GAP_WORDS[way], { after })}
            value={own?.width ?? sashing.width}
            least={0.25}
            most={12}
            onCommit={(width) => run(Math.abs(width - sashing.width) < 1e-9 ? null : width)}
          />
          {own ? (
            <button type="button" className="button" onClick={() => run(null)}>
              {say('Like the rest')}
            </button>
          ) : null}
        </div>
      );
    });
  return (
    <details className="within">
      <summary>{say('Vary sashing widths')}</summary>
      <div className="gaps">
        {gaps('columnGaps', columns)}
        {gaps('rowGaps', rows)}
      </div>
    </details>
  );
}
