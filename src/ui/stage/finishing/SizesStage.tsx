// The top with its measures drawn along it: the whole width and height, and what they are made of.

import { eachOnce, type Measure, measuresOf } from '../../../drawing/measures';
import { layOut } from '../../../geometry/setting';
import { wedgeProblem } from '../../../geometry/wedge';
import { phrase } from '../../../model/phrase';
import { useApp } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { SmallTop } from '../../wall/SmallTop';
import { useSay } from '../../words';
import { useBox } from './useBox';

/** Pixels beside the top for lines and words: left, above, right and below. */
const ROOM = { left: 64, above: 34, right: 118, below: 74 };

export function SizesStage() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const [frame, box] = useBox<HTMLDivElement>();
  const problem = wedgeProblem(project.wedge);
  if (problem) return <p className="stage-note">{say(problem)}</p>;
  const top = layOut(project);
  const narrow = box.width < 420;
  const room = narrow ? { left: 48, above: 34, right: 10, below: 12 } : ROOM;
  const scale = Math.max(
    0.1,
    Math.min(
      (box.width - room.left - room.right) / top.width,
      (box.height - room.above - room.below) / top.height,
    ),
  );
  const [width, height] = [top.width * scale, top.height * scale];
  const left = room.left + Math.max(0, (box.width - room.left - room.right - width) / 2);
  const { across, down } = measuresOf(project);
  const whole = phrase('{width}', { width: { inches: top.width } });
  const tall = phrase('{height}', { height: { inches: top.height } });
  return (
    <div className="fills" ref={frame}>
      {box.width === 0 ? null : (
        <>
          <div className="measured-top" style={{ left, top: room.above, width, height }}>
            <SmallTop project={project} label={say('The top with its sizes')} near />
          </div>
          <svg className="measures" width={box.width} height={box.height} aria-hidden>
            <g transform={`translate(${left} ${room.above})`}>
              <Line from={0} to={width} at={-12} way="across" words={say(whole)} strong />
              <Line from={0} to={height} at={-12} way="down" words={say(tall)} strong />
              {narrow ? null : (
                <>
                  <Row measures={eachOnce(across)} scale={scale} at={height + 12} way="across" />
                  <Row measures={eachOnce(down)} scale={scale} at={width + 12} way="down" />
                </>
              )}
            </g>
          </svg>
        </>
      )}
    </div>
  );
}

const NAMES: Readonly<Record<Measure['kind'], string>> = {
  border: 'border {border}: {length}',
  block: 'block {length}',
  sashing: 'sashing {length}',
  inside: 'inside the borders {length}',
};

type Way = 'across' | 'down';

/** A row of measures; words of narrow ones stand a line further out, so that they do not run into each other. */
function Row(props: { measures: readonly Measure[]; scale: number; at: number; way: Way }) {
  const { measures, scale, at, way } = props;
  const say = useSay();
  let taken = Number.NEGATIVE_INFINITY;
  let line = 0;
  return measures.map(({ kind, border, from, to }) => {
    const words = say(NAMES[kind], { border: border ?? '', length: { inches: to - from } });
    // About seven pixels to a letter; downwards a line of words is 16 high.
    const half = way === 'across' ? words.length * 3.5 : 8;
    const middle = ((from + to) / 2) * scale;
    line = middle - half < taken ? line + 1 : 0;
    taken = Math.max(taken, middle + half + 6);
    const lines = way === 'across' ? line : 0;
    return (
      <Line
        key={`${kind} ${from}`}
        from={from * scale}
        to={to * scale}
        at={at}
        way={way}
        words={words}
        further={lines}
        shift={way === 'down' ? line * 16 : 0}
      />
    );
  });
}

interface LineProps {
  from: number;
  to: number;
  /** Distance of the line from the top's corner across it. */
  at: number;
  way: Way;
  words: string;
  strong?: boolean;
  /** So many lines of words further out. */
  further?: number;
  /** Pixels along the line that the words are moved. */
  shift?: number;
}

function Line({ from, to, at, way, words, strong, further = 0, shift = 0 }: LineProps) {
  const tick = 4;
  const middle = (from + to) / 2;
  if (way === 'across') {
    const y = at < 0 ? at - 6 : at + 16 + further * 16;
    return (
      <g className={strong ? 'measure strong' : 'measure'}>
        <path d={`M${from} ${at}H${to}M${from} ${at - tick}v${2 * tick}M${to} ${at - tick}v${2 * tick}`} />
        {further > 0 ? <path className="lead" d={`M${middle} ${at}V${y - 12}`} /> : null}
        <text x={middle} y={y} textAnchor="middle">
          <Fractions text={words} inDrawing />
        </text>
      </g>
    );
  }
  const x = at < 0 ? at - 6 : at + 8;
  return (
    <g className={strong ? 'measure strong' : 'measure'}>
      <path d={`M${at} ${from}V${to}M${at - tick} ${from}h${2 * tick}M${at - tick} ${to}h${2 * tick}`} />
      <text x={x} y={middle + 4 + shift} textAnchor={at < 0 ? 'end' : 'start'}>
        <Fractions text={words} inDrawing />
      </text>
    </g>
  );
}
