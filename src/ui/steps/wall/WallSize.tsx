// Rows and columns of the wall, and the size of the top they make.
import { useMemo } from 'react';
import { resizeWall } from '../../../editing/commands/wall';
import { layOut } from '../../../geometry/setting';
import { sideTable } from '../../../model/find';
import { useApp, useAppStore } from '../../app';
import { CountField } from '../../fields/CountField';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';

export function WallSize() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const { rows, columns } = project.wall;
  const size = useMemo(() => layOut(project), [project]);
  const waiting = sideTable(project).length;
  const resize = (nextRows: number, nextColumns: number) =>
    store.getState().run(resizeWall(nextRows, nextColumns), 'here');
  return (
    <section aria-label={say('Size of the wall')}>
      <h3>{say('Size')}</h3>
      <div className="row">
        <CountField
          label="Rows"
          value={rows}
          least={1}
          most={40}
          onCommit={(next) => resize(next, columns)}
        />
        <CountField
          label="Columns"
          value={columns}
          least={1}
          most={40}
          onCommit={(next) => resize(rows, next)}
        />
      </div>
      <p style={{ marginTop: 8 }}>
        <Fractions
          text={say('The finished top measures {width} × {height}.', {
            width: { inches: size.width },
            height: { inches: size.height },
          })}
        />{' '}
        {waiting > 0
          ? say(
              waiting === 1 ? 'One block waits on the side table.' : '{count} blocks wait on the side table.',
              {
                count: waiting,
              },
            )
          : null}
      </p>
    </section>
  );
}
