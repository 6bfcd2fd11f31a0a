// The cells of a photographed wall as a grid of buttons; the one that is pressed opens below, to mark it empty, to say which block it is, and
// to put its strips right. Doubtful ones are gone through one by one.
import { useState } from 'react';
import { counted } from '../../../model/phrase';
import { doubtfulRims, withCorrected } from '../../../store/photo/corrected';
import type { WallCell, WallPhoto, WallPhotos } from '../../../store/photo/wallPhoto';
import { knownCells } from '../../../store/photo/wallToHang';
import { useApp } from '../../app';
import { useSay } from '../../words';
import { OpenCell } from './OpenCell';

export function WallCells({ photo, work }: { photo: WallPhoto; work: WallPhotos }) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const [open, setOpen] = useState<number | null>(null);
  const { grid, cells } = photo;
  const known = knownCells(project, cells);
  const doubtful = cells.flatMap((cell, at) => (known[at] || !doubtsIn(cell) ? [] : [at]));
  const next = doubtful.find((at) => at > (open ?? -1)) ?? doubtful[0];
  const rims = doubtful.reduce((sum, at) => sum + doubtsIn(cells[at]!), 0);
  return (
    <section className="sheet-of-paper" aria-labelledby="wall-cells">
      <h3 id="wall-cells">{say('Cells of the wall')}</h3>
      <p role="status">
        {say(
          counted(
            cells.filter((cell) => !cell.empty).length,
            '1 block, {empty} empty.',
            '{count} blocks, {empty} empty.',
            { empty: cells.filter((cell) => cell.empty).length },
          ),
        )}{' '}
        {rims > 0 ? say(counted(rims, '1 rim is doubtful.', '{count} rims are doubtful.')) : null}
      </p>
      {next === undefined ? null : (
        <div className="row">
          <button type="button" className="button" onClick={() => setOpen(next)}>
            {say('Next doubtful block')}
          </button>
        </div>
      )}
      <div className="wall-cells">
        <div style={{ gridTemplateColumns: `repeat(${grid.columns}, 56px)` }}>
          {cells.map((cell, at) => {
            const place = { row: Math.floor(at / grid.columns) + 1, column: (at % grid.columns) + 1 };
            const mark = markOf(cell, known[at]?.block.number ?? null);
            return (
              <button
                // biome-ignore lint/suspicious/noArrayIndexKey: a cell is its index
                key={at}
                type="button"
                className={cell.empty ? 'empty' : undefined}
                aria-pressed={open === at}
                aria-label={say('Row {row}, column {column}: {mark}', { ...place, mark: say(mark.words) })}
                onClick={() => setOpen(open === at ? null : at)}
              >
                {cell.read && !cell.empty ? <img src={cell.read.href} alt="" /> : at + 1}
                {mark.short ? <span className="cell-mark">{mark.short}</span> : null}
              </button>
            );
          })}
        </div>
      </div>
      {open !== null && cells[open] ? (
        <OpenCell
          key={open}
          at={open}
          columns={grid.columns}
          cell={cells[open]}
          known={known[open] ?? null}
          work={work}
        />
      ) : null}
    </section>
  );
}

function doubtsIn({ empty, read, corrected }: WallCell): number {
  return empty || !read ? 0 : doubtfulRims(withCorrected(read.block.shown, corrected));
}

function markOf(cell: WallCell, known: number | null) {
  if (cell.empty) return { words: 'empty', short: '' };
  if (!cell.read) return { words: 'a block, not read yet', short: '' };
  if (known !== null) return { words: `block ${known}`, short: `${known}` };
  const doubts = doubtsIn(cell);
  return doubts > 0
    ? { words: 'a new block, doubtful', short: `? ${doubts}` }
    : { words: 'a new block', short: '' };
}
