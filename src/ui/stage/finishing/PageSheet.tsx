// One page of the pattern on screen. Letters are spaced as in the PDF, which neither kerns nor joins them.
import { memo, startTransition, useEffect, useState } from 'react';
import type { PageShapes } from '../../../drawing/pattern/pageShapes';
import { usePicturesAtHand } from '../../session';
import { whenPainted } from '../../wall/growing/useParts';

export const PageSheet = memo(function PageSheet({ page }: { page: PageShapes }) {
  const { hrefOf } = usePicturesAtHand();
  const { width, height, prints } = page;
  const shapes = useGrowing(page.shapes);
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

/** Shapes of a page that are drawn at once: a picture of a large top has thousands, which hold the page up. */
const PART = 1000;

/** The shapes of a page that are drawn by now: those of a large one come in parts, each after the one before has been painted. */
function useGrowing(shapes: PageShapes['shapes']): PageShapes['shapes'] {
  const [drawn, setDrawn] = useState({ of: shapes, count: PART });
  const now = drawn.of === shapes ? drawn : { of: shapes, count: PART };
  if (now !== drawn) setDrawn(now);
  const { count } = now;
  useEffect(() => {
    if (count >= shapes.length) return;
    return whenPainted(() => startTransition(() => setDrawn({ of: shapes, count: count + PART })));
  }, [shapes, count]);
  return count >= shapes.length ? shapes : shapes.slice(0, count);
}
