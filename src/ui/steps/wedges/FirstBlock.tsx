// The first sewn block tells the truth: its measure gives the seam it was sewn with, and the whole plan follows.
import { useState } from 'react';
import { changeWedge } from '../../../editing/stripSets';
import { cornerSquare } from '../../../geometry/cornerSquare';
import { finishedBlock, unfinishedBlock } from '../../../geometry/wedge';
import { phrase } from '../../../model/phrase';
import type { WedgePlan } from '../../../model/project';
import type { Inches } from '../../../model/units';
import { useApp } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { LengthField } from '../../fields/LengthField';
import { Words } from '../../Words';
import { useSay, useUnit } from '../../words';
import { type Explained, explainMeasure } from './explainMeasure';
import { seamText } from './seamText';

export function FirstBlock() {
  const say = useSay();
  const wedge = useApp((app) => app.project.wedge);
  const [measured, setMeasured] = useState<{ across: Inches; found: Explained } | null>(null);
  const planned = unfinishedBlock(wedge).height;
  const shown = measured && explainMeasure(wedge, measured.across);
  return (
    <section aria-label={say('The first sewn block tells the truth')}>
      <h3>{say('The first sewn block tells the truth')}</h3>
      <div className="stack">
        <p>
          <Words
            text={say(
              'Sew one block, press it, and measure it flat across the middle, raw edge to raw edge. Planned: {planned}.',
              { planned: { inches: planned } },
            )}
          />
        </p>
        <div className="wdg-pair">
          <LengthField
            label="It measures"
            value={measured?.across ?? planned}
            least={1}
            most={100}
            onCommit={(across) => {
              const read = explainMeasure(wedge, across);
              if (!read.ok) return read.problems;
              setMeasured({ across, found: read.value });
              return [];
            }}
          />
        </div>
        {shown?.ok ? <Found key={measured?.across} wedge={wedge} found={shown.value} /> : null}
      </div>
    </section>
  );
}

/** The seam that was found, what follows from it, and taking it into the plan. */
function Found({ wedge, found }: { wedge: WedgePlan; found: Explained }) {
  const say = useSay();
  const unit = useUnit();
  const [run, problems] = useRun();
  const next = { ...wedge, assemblySeam: found.seam };
  const same = Math.abs(found.seam - wedge.assemblySeam) < 1e-6;
  const seam = seamText(found.seam, unit);
  const finished = { finished: { inches: finishedBlock(next).height } };
  return (
    <div className="stack wdg-found" role="status">
      <p>
        {say(
          same
            ? 'That is an assembly seam of {seam}, as in the plan.'
            : 'An assembly seam of {seam} explains it, give or take {within}.',
          { seam, within: seamText(found.within, unit) },
        )}
      </p>
      {same ? null : (
        <>
          <p>
            <Words
              text={say(
                wedge.perBlock === 8
                  ? phrase(
                      'With it the block finishes at {finished}, and corner squares of {fits} just fit. Sashing, borders and yardage follow.',
                      { ...finished, fits: { inches: cornerSquare(next).fits } },
                    )
                  : phrase('With it the block finishes at {finished}. Sashing, borders and yardage follow.', {
                      ...finished,
                    }),
              )}
            />
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
