// One cell of a photographed wall: whether it is empty, which block of the quilt it is, and its strips.
import { useEffect, useMemo, useRef } from 'react';
import { withCorrected } from '../../../store/photo/corrected';
import type { WallCell, WallPhotos } from '../../../store/photo/wallPhoto';
import type { KnownCell } from '../../../store/photo/wallToHang';
import { useSay } from '../../words';
import { BandsRead } from './BandsRead';
import { knownWords, lightWords } from './bandWords';
import { SquaredAndRead } from './SquaredAndRead';

interface Props {
  at: number;
  columns: number;
  cell: WallCell;
  /** The block of the quilt that it is taken for. */
  known: KnownCell | null;
  work: WallPhotos;
}

export function OpenCell({ at, columns, cell, known, work }: Props) {
  const say = useSay();
  const { read, empty, anew, corrected } = cell;
  const shown = useMemo(() => (read ? withCorrected(read.block.shown, corrected) : []), [read, corrected]);
  const looks = read ? knownWords(read.block) : null;
  const title = useRef<HTMLHeadingElement>(null);
  // Between the cell that was pressed and what is done with it lie all the other cells.
  useEffect(() => title.current?.focus(), []);
  return (
    <div className="photo-read stack">
      <h4 ref={title} tabIndex={-1}>
        {say('Row {row}, column {column}', {
          row: Math.floor(at / columns) + 1,
          column: (at % columns) + 1,
        })}
      </h4>
      <label className="check">
        <input
          type="checkbox"
          checked={empty}
          onChange={({ target }) => work.markEmpty(at, target.checked)}
        />
        {say('No block hangs here')}
      </label>
      {!empty && !read ? <p className="quiet">{say('Not read yet: press Read the blocks.')}</p> : null}
      {!empty && read ? (
        <>
          {looks ? (
            <label className="check">
              <input
                type="checkbox"
                checked={!anew}
                onChange={({ target }) => work.takeAnew(at, !target.checked)}
              />
              {say('{looks}', { looks })}
            </label>
          ) : null}
          {looks && !anew && !known ? (
            <p className="quiet">
              {say('Another cell looks more like it, so this one is taken for a new block.')}
            </p>
          ) : null}
          <SquaredAndRead href={read.href} shown={shown} />
          <p className="quiet">{say(lightWords(read.block))}</p>
          {known ? null : (
            <BandsRead
              shown={shown}
              read={read.block.wedges}
              onTell={(place, band, fabric) => work.tell(at, place, band, fabric)}
              onRead={(place, band) => work.fabricOf(at, place, band)}
            />
          )}
        </>
      ) : null}
    </div>
  );
}
