// The corner piece of a block that is no octagon, to scale: cut line, seam line, and lengths of its sides.
import { outlinePoints } from '../../../drawing/number';
import { cutOutline, sideLengths } from '../../../geometry/allowance';
import { cornerOutlines } from '../../../geometry/block';
import type { WedgePlan } from '../../../model/project';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';
import './settingPiece.css';

/** Screen pixels of the picture's longer side. */
const SIZE = 150;

export function SettingPiece({ wedge }: { wedge: WedgePlan }) {
  const say = useSay();
  const finished = cornerOutlines(wedge)[0]!;
  const cut = cutOutline(finished, wedge.outerSeam);
  const xs = cut.map((point) => point.x);
  const ys = cut.map((point) => point.y);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - top];
  const scale = SIZE / Math.max(width, height);
  const sides = sideLengths(cut).map((length) => say('{length}', { length: { inches: length } }));
  return (
    <figure className="wdg-setting">
      <svg
        width={width * scale}
        height={height * scale}
        viewBox={`${left} ${top} ${width} ${height}`}
        role="img"
        aria-label={say('The setting piece at the top right, as cut, its seam line dashed')}
      >
        <polygon points={outlinePoints(cut)} />
        <polygon points={outlinePoints(finished)} className="wdg-seam-line" />
      </svg>
      <figcaption>
        <Fractions
          text={say('Setting piece, cut: {width} × {height}. Its sides from the square corner: {sides}.', {
            width: { inches: width },
            height: { inches: height },
            sides: { list: sides },
          })}
        />{' '}
        {say(waysRound(wedge.perBlock))}
      </figcaption>
    </figure>
  );
}

function waysRound(perBlock: number): string {
  if (perBlock % 4 === 0) return 'All four are alike.';
  return perBlock === 6
    ? 'Two of the four are this way round, two the other: halve rectangles on both diagonals.'
    : 'Two of the four are this way round, two the other: turn the template over for those.';
}
