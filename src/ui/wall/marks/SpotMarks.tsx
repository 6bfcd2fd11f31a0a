// Marks that a row of a list puts on the wall: a centre of weight with a line from the middle; lit wedges, with all else dimmed. They come
// later than the wall.
import { memo } from 'react';
import type { Mark } from '../../../balance/finding';
import { centrePaths, centreReach } from '../../../drawing/centreMark';
import type { Drawing } from '../../../drawing/drawing';

export const SpotMarks = memo(function SpotMarks({
  marks,
  drawing,
}: {
  marks: readonly Mark[];
  drawing: Drawing;
}) {
  return (
    <>
      <LightMarks marks={marks} />
      <CentreMarks marks={marks} reach={centreReach(drawing)} />
    </>
  );
});

function CentreMarks({ marks, reach }: { marks: readonly Mark[]; reach: number }) {
  const centres = marks.flatMap((mark) => (mark.kind === 'centre' ? [mark] : []));
  if (centres.length === 0) return null;
  return (
    <g className="mark" strokeLinecap="round" strokeLinejoin="round" aria-hidden>
      {centres.map((mark) => (
        <g key={mark.of} data-mark={`centre-${mark.of}`}>
          {centrePaths(mark, reach).map(({ d, fill, stroke, width }) => (
            <path key={`${d} ${fill} ${stroke}`} d={d} fill={fill} stroke={stroke} strokeWidth={width} />
          ))}
        </g>
      ))}
    </g>
  );
}

/** Far outside any top, inches. */
const BEYOND = 4000;

/** Dims the whole top but for the lit parts, which are outlined dark and light. */
function LightMarks({ marks }: { marks: readonly Mark[] }) {
  const lit = marks.flatMap((mark) => (mark.kind === 'light' ? [mark.outline] : []));
  if (lit.length === 0) return null;
  const d = lit.map((outline) => `M${outline.map(({ x, y }) => `${x} ${y}`).join('L')}Z`).join('');
  const all = `M${-BEYOND} ${-BEYOND}H${BEYOND}V${BEYOND}H${-BEYOND}Z`;
  return (
    <g className="mark lit-wedges" aria-hidden>
      <path d={`${all}${d}`} fillRule="evenodd" className="dim" />
      <path d={d} fill="none" stroke="#000" strokeWidth={0.5} strokeLinejoin="round" />
      <path d={d} fill="none" stroke="#fff" strokeWidth={0.25} strokeLinejoin="round" />
    </g>
  );
}
