// The heading of the opened block: its number and where it hangs.
import { cellIndexOf } from '../../../../model/find';
import type { Block } from '../../../../model/project';
import { rowAndColumn } from '../../../../model/wallCells';
import { useApp } from '../../../app';
import { useSay } from '../../../words';

export function BlockHeading({ block }: { block: Block }) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const cell = cellIndexOf(project, block.id);
  return (
    <header className="block-title">
      <h2 tabIndex={-1}>{say('Block {block}', { block: block.number })}</h2>
      <p>
        {cell < 0 ? say('On the side table') : say('Row {row}, column {column}', rowAndColumn(cell, project))}
      </p>
    </header>
  );
}
