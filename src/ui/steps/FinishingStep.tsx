// Step 6, finishing: picture, words and pattern to take away, the cloth to buy, and colourways of the quilt.
import { StepFoot } from './StepFoot';
import { StepHeading } from './StepHeading';
import './finishing/finishing.css';
import { CuttingSection } from './finishing/cloth/CuttingSection';
import { KitsSection } from './finishing/cloth/KitsSection';
import { ColourwaysSection } from './finishing/colourways/ColourwaysSection';
import { PartsList } from './finishing/PartsList';
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
      <PartsList />
      <SizesSection />
      <PictureSection />
      <WordsSection />
      <PatternSection />
      <CuttingSection />
      <KitsSection />
      <WeightSection />
      <ColourwaysSection />
      <StepFoot />
    </>
  );
}
