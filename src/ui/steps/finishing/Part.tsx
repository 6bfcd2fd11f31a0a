// One part of finishing in the panel: its heading and choices, and in the foot its main action with what came of it.
import type { ReactNode, Ref } from 'react';
import type { FinishingPart } from '../../../store/finishing';
import { useSay } from '../../words';
import { StepFoot } from '../StepFoot';
import { PART_NAMES } from './parts';

interface Props {
  id: FinishingPart;
  /** The main action, and under it what it did. */
  foot?: ReactNode;
  className?: string;
  ref?: Ref<HTMLElement>;
  children: ReactNode;
}

export function Part({ id, foot, className, ref, children }: Props) {
  const say = useSay();
  return (
    <>
      <section ref={ref} className={className} aria-labelledby={`${id}-title`}>
        <h3 id={`${id}-title`}>{say(PART_NAMES[id])}</h3>
        {children}
      </section>
      <StepFoot>{foot}</StepFoot>
    </>
  );
}
