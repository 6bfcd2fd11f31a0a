// The grid of a wall on its photograph: outer corners, rows, columns and the gap between blocks, with the cells and their numbers.
import type { Point } from '../../../geometry/point';
import type { GridLaid } from '../../../photo/wall/grid';
import { MOST_LINES, type WallPhoto, type WallPhotos } from '../../../store/photo/wallPhoto';
import { CountField } from '../../fields/CountField';
import { useSay } from '../../words';
import { CornerPicture } from './CornerPicture';
import { pointsOf } from './cornerNames';

/** The widest gap between blocks, in hundredths of a block. */
const WIDEST = 60;

export function GridOnPhoto({ photo, work }: { photo: WallPhoto; work: WallPhotos }) {
  const say = useSay();
  const { name, href, opened, grid, found, cells } = photo;
  const lay = (to: Partial<GridLaid>) => {
    work.lay({ ...grid, ...to });
    return [];
  };
  return (
    <>
      <p className="quiet">
        {say(
          found
            ? 'Rows and columns found. Check the corners: drag each, or focus it and press arrows.'
            : 'Lay the corners on the outer corners of the blocks, and set rows and columns.',
        )}
      </p>
      <CornerPicture
        label={say('Photograph {name}', { name })}
        href={href}
        size={opened}
        corners={grid.corners}
        onLay={(corners) => lay({ corners })}
      >
        {(corners) =>
          corners === grid.corners
            ? cells.map(({ corners: cell, empty }, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a cell is its index
                <g key={at}>
                  <polygon
                    points={pointsOf(cell)}
                    className={empty ? 'cell-outline empty' : 'cell-outline'}
                  />
                  <CellNumber cell={cell} words={empty ? '–' : String(at + 1)} />
                </g>
              ))
            : null
        }
      </CornerPicture>
      <div className="row">
        <CountField
          label="Rows"
          of={say('Photograph')}
          value={grid.rows}
          least={1}
          most={MOST_LINES}
          onCommit={(rows) => lay({ rows })}
        />
        <CountField
          label="Columns"
          of={say('Photograph')}
          value={grid.columns}
          least={1}
          most={MOST_LINES}
          onCommit={(columns) => lay({ columns })}
        />
        <CountField
          label="Gap, hundredths of a block"
          value={Math.round(100 * grid.gap)}
          least={0}
          most={WIDEST}
          onCommit={(gap) => lay({ gap: gap / 100 })}
        />
      </div>
    </>
  );
}

function CellNumber({ cell, words }: { cell: readonly Point[]; words: string }) {
  const [one, two, three] = cell as readonly [Point, Point, Point];
  const size = 0.3 * Math.hypot(one.x - two.x, one.y - two.y);
  return (
    <text x={(one.x + three.x) / 2} y={(one.y + three.y) / 2} fontSize={size} strokeWidth={size / 8}>
      {words}
    </text>
  );
}
