// One page of the pattern on screen. Letters are spaced as in the PDF, which neither kerns nor joins them.
import { memo } from 'react';
import type { PageShapes } from '../../../drawing/pattern/pageShapes';
import { usePicturesAtHand } from '../../session';

export const PageSheet = memo(function PageSheet({ page }: { page: PageShapes }) {
  const { hrefOf } = usePicturesAtHand();
  const { width, height, prints, shapes } = page;
  return (
    // biome-ignore lint/a11y/noSvgWithoutTitle: the words of the page are its text
    <svg className="page-sheet" viewBox={`0 0 ${width} ${height}`} strokeLinejoin="round">
      <defs>
        {prints.map(({ id, of, transform }) => (
          <pattern key={id} id={id} href={`#${of}`} patternTransform={transform} />
        ))}
      </defs>
      <rect width={width} height={height} fill="#ffffff" />
      {shapes.map((shape, at) => {
        switch (shape.kind) {
          case 'text':
            return (
              <text
                // biome-ignore lint/suspicious/noArrayIndexKey: marks are told apart by their order only
                key={at}
                x={shape.x}
                y={shape.y}
                className={shape.face}
                fontSize={shape.size}
                fill={shape.ink}
              >
                {shape.text}
              </text>
            );
          case 'path':
            // biome-ignore lint/suspicious/noArrayIndexKey: marks are told apart by their order only
            return <path key={at} d={shape.d} {...shape.look} />;
          case 'circle':
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: marks are told apart by their order only
              <circle key={at} cx={shape.cx} cy={shape.cy} r={shape.r} {...shape.look} />
            );
          case 'image': {
            const href = hrefOf(shape.picture);
            const { x, y, width: wide, height: tall, transform } = shape;
            return href === null ? null : (
              <image
                // biome-ignore lint/suspicious/noArrayIndexKey: marks are told apart by their order only
                key={at}
                {...{ x, y, transform, href }}
                width={wide}
                height={tall}
                preserveAspectRatio="none"
              />
            );
          }
          default:
            return shape satisfies never;
        }
      })}
    </svg>
  );
});
