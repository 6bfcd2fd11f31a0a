// One part of finishing in the panel: in the foot its main action with what came of it, and its heading and choices.
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
      <StepFoot>{foot}</StepFoot>
      <section ref={ref} className={className} aria-labelledby={`${id}-title`}>
        <h3 id={`${id}-title`}>{say(PART_NAMES[id])}</h3>
        {children}
      </section>
    </>
  );
}
