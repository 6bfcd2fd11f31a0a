// The backing: its lengths side by side, seams as lines, the quilt as a dotted outline inside the overhang.
import type { BackingLayout } from '../../../cutting/yardage/backing';
import { phrase } from '../../../model/phrase';
import { Fractions } from '../../fields/Fractions';
import { useSay } from '../../words';

interface Props {
  layout: BackingLayout;
  overhang: number;
  /** The greatest width of the picture, pixels. */
  most: number;
}

export function BackingPicture({ layout, overhang, most }: Props) {
  const say = useSay();
  const { width, height } = layout.size;
  const scale = Math.min(most / width, 420 / height);
  const words =
    layout.run === 'down'
      ? phrase('Backing of {count} pieces, lengths down the quilt', { count: layout.panels.length })
      : phrase('Backing of {count} pieces, lengths across the quilt', { count: layout.panels.length });
  return (
    <figure className="stage-card backing-figure">
      <svg
        role="img"
        aria-label={say(words)}
        width={width * scale}
        height={height * scale}
        viewBox={`0 0 ${width} ${height}`}
      >
        {layout.panels.map((panel, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: panels are told apart by their order only
          <rect key={index} className="backing-panel" {...panel} />
        ))}
        <rect
          className="backing-top"
          x={overhang}
          y={overhang}
          width={width - 2 * overhang}
          height={height - 2 * overhang}
        />
      </svg>
      <figcaption className="quiet">
        <Fractions
          text={say('Backing {width} × {height}; dotted: the quilt', {
            width: { inches: width },
            height: { inches: height },
          })}
        />
      </figcaption>
    </figure>
  );
}
