// The chosen way of seeing as an SVG filter. Elements of class `seen`, drawn in inches of fabric, are shown through it (seeing.css).
import { useDeferredValue, useMemo } from 'react';
import { type FilterStep, filterSteps } from '../../colour/seen';
import type { ToneLimits } from '../../colour/tone';
import { drawProject } from '../../drawing/drawProject';
import { fabricAmounts } from '../../drawing/fabricOrder';
import { type QuiltTones, quiltTones } from '../../drawing/fabricTones';
import type { Project } from '../../model/project';
import { useApp } from '../app';
import { distanceOf } from './ways';
import './seeing.css';

/** Light, medium and dark of the open quilt, a moment after a change; null without fabrics. */
export function useTones(): QuiltTones | null {
  const project = useDeferredValue(useApp((app) => app.project));
  return useMemo(() => tonesOf(project), [project]);
}

function tonesOf(project: Project): QuiltTones | null {
  return quiltTones(project.fabrics, fabricAmounts(project, drawProject(project)));
}

export function SeeingFilter() {
  const way = useApp((app) => app.look.way);
  if (way === 'colour') return null;
  return way === 'tones' ? <TonesFilter /> : <Filter tones={null} />;
}

/** Apart, because only for the tones the top has to be measured after each change. */
function TonesFilter() {
  return <Filter tones={useTones()?.limits ?? null} />;
}

function Filter({ tones }: { tones: ToneLimits | null }) {
  const way = useApp((app) => app.look.way);
  const severity = useApp((app) => app.look.severity);
  const distance = useApp(distanceOf);
  const steps = filterSteps(way, { distance, severity, tones });
  return (
    <filter
      id="way-of-seeing"
      colorInterpolationFilters="linearRGB"
      // A blur reaches beyond a single block by up to three deviations.
      x="-25%"
      y="-25%"
      width="150%"
      height="150%"
    >
      {steps.map((step) => (
        <Step key={step.kind} step={step} />
      ))}
    </filter>
  );
}

function Step({ step }: { step: FilterStep }) {
  switch (step.kind) {
    case 'matrix':
      return <feColorMatrix values={step.values.join(' ')} />;
    case 'blur':
      return <feGaussianBlur stdDeviation={step.deviation} />;
    case 'levels': {
      const table = { type: 'discrete', tableValues: step.table.join(' ') };
      return (
        <feComponentTransfer colorInterpolationFilters="sRGB">
          <feFuncR {...table} />
          <feFuncG {...table} />
          <feFuncB {...table} />
        </feComponentTransfer>
      );
    }
    default:
      return step satisfies never;
  }
}
