// Hangs all blocks of the side table at once, on a larger wall where this one has no room for them.
import { useMemo } from 'react';
import { hangAll } from '../../../editing/commands/wall';
import { wallForAll } from '../../../editing/whole/hangBlocks';
import { sideTable } from '../../../model/find';
import { isPlain } from '../../../model/wallCells';
import { rowWords } from '../../../model/words/rowWords';
import { useApp, useAppStore } from '../../app';
import { useSay } from '../../words';

export function HangAll() {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const larger = useMemo(() => wallForAll(project), [project]);
  if (larger)
    return (
      <button type="button" className="button" onClick={() => store.getState().run(larger.command)}>
        {say('Hang all on {rows}', { rows: rowWords(larger) })}
      </button>
    );
  const waiting = sideTable(project).map((block) => block.id);
  const hasEmptyCell = project.wall.cells.some((cell, at) => cell === null && !isPlain(at, project));
  if (waiting.length < 2 || !hasEmptyCell) return null;
  return (
    <button type="button" className="button" onClick={() => store.getState().run(hangAll(project, waiting))}>
      {say('Hang all')}
    </button>
  );
}
