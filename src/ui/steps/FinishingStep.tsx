// The panel of finishing: sizes, the picture to take away, and its words. Yardage and the pattern join as sections.
import { StepHeading } from './StepHeading';
import './finishing/finishing.css';
import { CuttingSection } from './finishing/cloth/CuttingSection';
import { KitsSection } from './finishing/cloth/KitsSection';
import { ColourwaysSection } from './finishing/colourways/ColourwaysSection';
import { PatternSection } from './finishing/PatternSection';
import { PictureSection } from './finishing/PictureSection';
import { SizesSection } from './finishing/SizesSection';
import { WeightSection } from './finishing/WeightSection';
import { WordsSection } from './finishing/WordsSection';

export function FinishingStep() {
  return (
    <>
      <StepHeading
        title="Finishing"
        line="What the top measures, its picture, the cloth it takes, and the written pattern."
      />
      <SizesSection />
      <PictureSection />
      <WordsSection />
      <WeightSection />
      <CuttingSection />
      <KitsSection />
      <PatternSection />
      <ColourwaysSection />
    </>
  );
}
