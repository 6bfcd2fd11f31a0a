// Marks all blocks in one row of the wall, so that their progress can be set together.
import { useId } from 'react';
import type { BlockId } from '../../../model/project';
import { useApp } from '../../app';
import { useSay } from '../../words';

export function MarkRow({ onMark }: { onMark: (blocks: readonly BlockId[]) => void }) {
  const say = useSay();
  const id = useId();
  const { rows, columns, cells } = useApp((app) => app.project.wall);
  const onPoint = useApp((app) => app.project.setting.layout.kind === 'onPoint');
  // On point the rows are sewn on the slant, so blocks are marked one by one.
  if (onPoint) return null;
  return (
    <div className="field">
      <label htmlFor={id}>{say('Choose a row of the wall')}</label>
      <select
        id={id}
        value=""
        onChange={(event) => {
          const row = Number(event.target.value);
          const hung = cells.slice(row * columns, (row + 1) * columns);
          onMark(hung.flatMap((cell) => cell?.block ?? []));
        }}
      >
        <option value="" disabled>
          {say('Which row')}
        </option>
        {Array.from({ length: rows }, (_, row) => row).map((row) => (
          <option key={row} value={row}>
            {say('Row {row}', { row: row + 1 })}
          </option>
        ))}
      </select>
    </div>
  );
}
