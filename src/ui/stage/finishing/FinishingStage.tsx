// The large area at the step Finishing: what the chosen part makes. Its choices stand in the panel (ui/steps/finishing/).
import type { FinishingPart } from '../../../store/finishing';
import { useApp } from '../../app';
import { PART_NAMES } from '../../steps/finishing/parts';
import { useSay } from '../../words';
import { ClothStage } from './ClothStage';
import { ColourwaysStage } from './ColourwaysStage';
import { KitStage } from './KitStage';
import { PatternStage } from './PatternStage';
import { PictureStage } from './PictureStage';
import { SizesStage } from './SizesStage';
import { WeightStage } from './WeightStage';
import { WordsStage } from './WordsStage';
import './finishing.css';

const STAGES: Readonly<Record<FinishingPart, () => React.ReactNode>> = {
  sizes: SizesStage,
  picture: PictureStage,
  words: WordsStage,
  pattern: PatternStage,
  cutting: ClothStage,
  kits: KitStage,
  weight: WeightStage,
  colourways: ColourwaysStage,
};

export function FinishingStage() {
  const say = useSay();
  const part = useApp((app) => app.laid.part);
  const Laid = STAGES[part];
  return (
    // biome-ignore lint/a11y/useSemanticElements: what scrolls is no <fieldset>
    <div
      key={part}
      className="scrolls"
      role="group"
      aria-label={say(PART_NAMES[part])}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: keys scroll it
      tabIndex={0}
    >
      <Laid />
    </div>
  );
}
