// Hangs the blocks as they were photographed, and says before what happens to the blocks of the quilt.
import { useState } from 'react';
import { hangPhotographed, whatHappens } from '../../../editing/pictured/hangPhotographed';
import { findBlock } from '../../../model/find';
import { counted, type Phrase, phrase } from '../../../model/phrase';
import type { PictureId } from '../../../model/picture/picture';
import type { BlockId, Project } from '../../../model/project';
import type { Problem } from '../../../model/result';
import { isHung, type WallPhoto, type WallPhotos } from '../../../store/photo/wallPhoto';
import { knownCells, wallToHang } from '../../../store/photo/wallToHang';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { ProgressBar } from '../../fields/ProgressBar';
import { useSession } from '../../session';
import { useSay } from '../../words';

const NONE: readonly Problem[] = [];

export function HangWall({ photo, work }: { photo: WallPhoto; work: WallPhotos }) {
  const say = useSay();
  const store = useAppStore();
  const session = useSession();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const [keeping, setKeeping] = useState<number | null>(null);
  const [refused, setRefused] = useState(NONE);
  const words = happensWords(project, photo);
  const there = isHung(photo, project);
  const hang = async () => {
    if (keeping !== null) return;
    const known = knownCells(project, photo.cells);
    const pictures = new Map<number, PictureId>();
    setRefused(NONE);
    for (const [at, { empty, read }] of photo.cells.entries()) {
      if (empty || !read || known[at]) continue;
      setKeeping(at / photo.cells.length);
      const kept = await session.takePicture(read.block.picture.bytes);
      if (!kept.ok) {
        setKeeping(null);
        setRefused(kept.problems);
        return;
      }
      pictures.set(at, kept.value);
    }
    setKeeping(null);
    const wall = wallToHang(store.getState().project, photo, (cell) => pictures.get(cell) ?? '');
    if (!run(hangPhotographed(wall))) return;
    store.getState().lay({ photoWall: false });
    store.getState().announce(phrase('The wall hangs as photographed.'));
    work.hang([...pictures.values()]);
  };
  return (
    <section className="sheet-of-paper" aria-labelledby="hang-wall">
      <h3 id="hang-wall">{say('Hang it here')}</h3>
      {there ? (
        <p role="status">
          {say('Its new blocks are blocks of the quilt. To hang them again, undo that first.')}
        </p>
      ) : (
        <ul className="plain-list">
          {words.map((one) => (
            <li key={say(one)}>{say(one)}</li>
          ))}
        </ul>
      )}
      <div className="row">
        <button
          type="button"
          className="button solid"
          disabled={there}
          aria-disabled={keeping !== null}
          onClick={() => void hang()}
        >
          {say('Hang the blocks as photographed')}
        </button>
      </div>
      {keeping === null ? null : <ProgressBar label={say('Saving the pictures')} share={keeping} />}
      <Complaint problems={refused.length > 0 ? refused : problems} />
    </section>
  );
}

/** What hanging does: to new blocks, to those that were recognised, and to those that are not in the photograph. */
function happensWords(project: Project, photo: WallPhoto): Phrase[] {
  const wall = wallToHang(project, photo, () => '');
  const { added, moved, stay, toTable } = whatHappens(project, wall);
  const { rows, columns } = wall;
  const other = rows !== project.wall.rows || columns !== project.wall.columns;
  return [
    ...(other ? [phrase('The wall becomes {rows} down, {columns} across.', { rows, columns })] : []),
    ...(added > 0
      ? [counted(added, '1 block is added by its picture.', '{count} blocks are added by their pictures.')]
      : []),
    ...(moved.length > 0
      ? [phrase('Recognised, and moved or turned: {blocks}.', { blocks: numbers(project, moved) })]
      : []),
    ...(stay.length > 0
      ? [phrase('Recognised, and as they hang: {blocks}.', { blocks: numbers(project, stay) })]
      : []),
    ...(toTable.length > 0
      ? [
          phrase('Not in the photograph, so they wait on the side table: {blocks}.', {
            blocks: numbers(project, toTable),
          }),
        ]
      : []),
    phrase('One undo takes all of it back.'),
  ];
}

function numbers(project: Project, blocks: readonly BlockId[]): string {
  return blocks
    .map((id) => findBlock(project, id)?.number ?? 0)
    .sort((one, other) => one - other)
    .join(', ');
}
