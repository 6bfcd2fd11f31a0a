// The large area at the step Finishing: what the chosen part makes. Its choices stand in the panel (ui/steps/finishing/).
import type { FinishingPart } from '../../../store/finishing';
import { useApp } from '../../app';
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
  const part = useApp((app) => app.laid.part);
  const Laid = STAGES[part];
  return <Laid />;
}
