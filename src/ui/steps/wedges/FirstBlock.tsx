// The measure of the first sewn block: it gives the seam that was really sewn, and with it a corrected plan.
import { useState } from 'react';
import { explainMeasure, type MeasuredSeam } from '../../../cutting/wedges/measure';
import { cornerSquare } from '../../../cutting/yardage/triangleSquares';
import { changeWedge } from '../../../editing/commands/stripSets';
import { finishedBlock, unfinishedBlock } from '../../../geometry/wedge';
import { phrase } from '../../../model/phrase';
import type { Inches, LengthUnit } from '../../../model/units';
import { useApp } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { Fractions } from '../../fields/Fractions';
import { LengthField } from '../../fields/LengthField';
import { useSay, useUnit } from '../../words';

export function FirstBlock() {
  const say = useSay();
  const unit = useUnit();
  const wedge = useApp((app) => app.project.wedge);
  const [measure, setMeasure] = useState<Inches | null>(null);
  const planned = unfinishedBlock(wedge).height;
  const found = measure === null ? null : explainMeasure(wedge, measure, unit);
  return (
    <div className="stack">
      <p>
        <Fractions
          text={say(
            'Sew one block, press it, and measure it flat across the middle, raw edge to raw edge. Planned: {planned}.',
            { planned: { inches: planned } },
          )}
        />
      </p>
      <div className="wdg-pair">
        <LengthField
          label="It measures"
          value={measure ?? planned}
          onCommit={(measured) => {
            const read = explainMeasure(wedge, measured, unit);
            if (!read.ok) {
              setMeasure(null);
              return read.problems;
            }
            setMeasure(measured);
            return [];
          }}
        />
      </div>
      {found?.ok ? <Found found={found.value} /> : null}
    </div>
  );
}

const RULERS: Readonly<Record<LengthUnit, string>> = {
  in: 'A ruler read to a sixteenth leaves {tolerance} either way.',
  cm: 'A ruler read to a millimetre leaves {tolerance} either way.',
};

/** The seam that was found, its consequences, and a button that takes it into the plan. */
function Found({ found }: { found: MeasuredSeam }) {
  const say = useSay();
  const unit = useUnit();
  const [run, problems] = useRun();
  const finished = { finished: { inches: finishedBlock(found.wedge).height } };
  const follows =
    found.wedge.perBlock === 8
      ? phrase(
          'With it the block finishes at {finished}, and corner squares of {fits} just fit. Sashing, borders and yardage follow.',
          { ...finished, fits: { inches: cornerSquare(found.wedge, unit).fits } },
        )
      : phrase('With it the block finishes at {finished}. Sashing, borders and yardage follow.', finished);
  return (
    <div className="stack wdg-found" role="status">
      <p>
        <Fractions text={say(found.words)} />
      </p>
      {found.asPlanned ? null : (
        <>
          <p className="quiet">{say(RULERS[unit], { tolerance: { seam: found.tolerance } })}</p>
          <p>
            <Fractions text={say(follows)} />
          </p>
          <div>
            <button
              type="button"
              className="button solid"
              onClick={() => run(changeWedge({ assemblySeam: found.seam }))}
            >
              {say('Plan with this seam')}
            </button>
          </div>
        </>
      )}
      <Complaint problems={problems} />
    </div>
  );
}
