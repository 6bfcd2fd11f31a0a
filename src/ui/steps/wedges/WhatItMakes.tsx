// Figures of the block that the wedge makes, and of its corner pieces.

import { cornerSquare } from '../../../cutting/yardage/triangleSquares';
import { cornerOutlines } from '../../../geometry/block';
import { finishedBlock, rimLength, unfinishedBlock } from '../../../geometry/wedge';
import type { PhraseValue } from '../../../model/phrase';
import type { WedgePlan } from '../../../model/project';
import type { LengthUnit } from '../../../model/units';
import { Fractions } from '../../fields/Fractions';
import { useSay, useUnit } from '../../words';

interface Line {
  readonly name: string;
  readonly say: string;
  readonly with: Record<string, PhraseValue>;
}

export function WhatItMakes({ wedge }: { wedge: WedgePlan }) {
  const say = useSay();
  const unit = useUnit();
  return (
    <dl className="wdg-figures">
      {linesOf(wedge, unit).map((line) => (
        <div key={line.name}>
          <dt>{say(line.name)}</dt>
          <dd>
            <Fractions text={say(line.say, line.with)} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

function linesOf(wedge: WedgePlan, unit: LengthUnit): Line[] {
  const finished = finishedBlock(wedge);
  const unfinished = unfinishedBlock(wedge);
  const sized = (name: string, size: { width: number; height: number }): Line => ({
    name,
    say: Math.abs(size.width - size.height) < 1e-9 ? '{width} square' : '{width} × {height}',
    with: { width: { inches: size.width }, height: { inches: size.height } },
  });
  return [
    sized('Block, finished', finished),
    sized('Block, before it is sewn in', unfinished),
    { name: 'One rim, finished', say: '{rim}', with: { rim: { inches: rimLength(wedge) } } },
    ...cornerLines(wedge, unit),
  ];
}

/** Lines on the corners: for eight wedges on corner triangles, for other numbers on the size of the setting piece. */
function cornerLines(wedge: WedgePlan, unit: LengthUnit): Line[] {
  if (wedge.perBlock === 8) {
    const square = cornerSquare(wedge, unit);
    return [
      { name: 'Corner triangle, finished leg', say: '{leg}', with: { leg: { inches: square.leg } } },
      { name: 'Square for two corners, exact size', say: '{fits}', with: { fits: { inches: square.fits } } },
      {
        name: 'Square for two corners, oversized: trim after sewing',
        say: '{comfortable}',
        with: { comfortable: { inches: square.comfortable } },
      },
    ];
  }
  const corner = cornerOutlines(wedge)[0]!;
  const extent = (axis: 'x' | 'y') =>
    Math.max(...corner.map((point) => point[axis])) - Math.min(...corner.map((point) => point[axis]));
  return [
    {
      name: 'Each of the four setting pieces',
      say: '{width} × {height} finished, {sides} sides',
      with: { width: { inches: extent('x') }, height: { inches: extent('y') }, sides: corner.length },
    },
  ];
}
