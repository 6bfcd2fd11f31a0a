// Piecing a border from leftover strips: how far they reach, whether whole pieces fit, and a spacer that makes them fit.
import { useMemo, useState } from 'react';
import { type PiecedBorderPlan, piecedBorder } from '../../../../cutting/top/piecedBorder';
import { addSpacer, pieceBorder } from '../../../../editing/commands/edges';
import { changeBorder } from '../../../../editing/commands/setting';
import type { Border, Project } from '../../../../model/project';
import { useApp } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { Fractions } from '../../../fields/Fractions';
import { useSay } from '../../../words';

interface Props {
  border: Border;
  index: number;
  open: boolean;
  onOpen: (open: boolean) => void;
  /** Called when a spacer was put inside this border, which raises its index by one. */
  onSpacer: () => void;
}

export function PiecedPart({ border, index, open, onOpen, onSpacer }: Props) {
  const say = useSay();
  return (
    <details
      className="within"
      open={open}
      onToggle={(event) => {
        if (event.currentTarget.open !== open) onOpen(event.currentTarget.open);
      }}
    >
      <summary>
        {say(border.keys ? 'Pieced from {count} pieces' : 'Piece it from strips left over', {
          count: border.keys?.length ?? 0,
        })}
      </summary>
      {open ? <Piecing border={border} index={index} onSpacer={onSpacer} /> : null}
    </details>
  );
}

function Piecing({ border, index, onSpacer }: Pick<Props, 'border' | 'index' | 'onSpacer'>) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const [deal, setDeal] = useState(project.preferences.seed);
  const plan = useMemo(() => piecedBorder(project, index, deal), [project, index, deal]);
  const { keys, widest } = plan;
  return (
    <div className="stack">
      {lines(plan, border).map(([sentence, values]) => (
        <p key={sentence}>
          <Fractions text={say(sentence, values)} />
        </p>
      ))}
      <div className="row">
        {keys ? (
          <button
            type="button"
            className="button"
            onClick={() => {
              // A second press puts the pieces in another random order.
              const next = border.keys ? deal + 1 : deal;
              setDeal(next);
              run(pieceBorder(index, [...(piecedBorder(project, index, next).keys ?? keys)]));
            }}
          >
            {say(border.keys ? 'Deal the pieces again' : 'Piece this border')}
          </button>
        ) : null}
        {keys || widest === 0 || widest >= border.width ? null : (
          <button
            type="button"
            className="button"
            onClick={() => run(changeBorder(index, { width: widest }))}
          >
            <Fractions text={say('Make it {width} wide', { width: { inches: widest } })} />
          </button>
        )}
        {plan.spacer ? (
          <button
            type="button"
            className="button"
            onClick={() => {
              const { side, end } = plan.spacer!;
              if (run(addSpacer(index, spacerFabric(project, border), side, end))) onSpacer();
            }}
          >
            {say('Add the spacer')}
          </button>
        ) : null}
        {border.keys ? (
          <button type="button" className="button" onClick={() => run(pieceBorder(index, null))}>
            {say('Make it plain')}
          </button>
        ) : null}
      </div>
      <Complaint problems={problems} />
    </div>
  );
}

type Line = readonly [sentence: string, values: Record<string, { inches: number }>];

/** Lines on the strips that are left and that the border takes, and on whether whole pieces fit. */
function lines(plan: PiecedBorderPlan, border: Border): Line[] {
  if (plan.stock.length === 0) return [['No strips are left over.', {}]];
  const found: Line[] = [
    [
      'Cut across, the strips left over make {available} of border {width} wide; this one takes {needed}.',
      {
        available: { inches: plan.available },
        needed: { inches: plan.needed },
        width: { inches: border.width },
      },
    ],
  ];
  if (!plan.keys && plan.widest === 0) found.push(['They are not enough for a border of any width.', {}]);
  else if (!plan.keys)
    found.push(['They are enough for a border {width} wide.', { width: { inches: plan.widest } }]);
  if (plan.fits) found.push(['Whole pieces fit every side.', {}]);
  else if (plan.spacer) {
    const { side, end } = plan.spacer;
    const even = Math.abs(side - end) < 1e-6;
    found.push([
      even
        ? 'Whole pieces do not fit. A plain border {side} wide inside it makes them fit.'
        : 'Whole pieces do not fit. A plain border inside it, {side} at the sides and {end} at top and bottom, makes them fit.',
      { side: { inches: side }, end: { inches: end } },
    ]);
  } else found.push(['Whole pieces do not fit; the last piece of a side is cut narrower.', {}]);
  return found;
}

/** The fabric of the spacer: the border's own, or the corners' where the border's is among the pieces. */
function spacerFabric(project: Project, border: Border): string {
  const pieced = border.keys?.some((key) => key.fabric === border.fabric) ?? false;
  return pieced ? project.setting.cornerFabric : border.fabric;
}
