// Step 6, finishing: the list of its parts, and the choices of the one on show. What it makes lies on the large area
// (ui/stage/finishing/).
import { useApp } from '../app';
import { StepHeading } from './StepHeading';
import './finishing/finishing.css';
import { CuttingSection } from './finishing/cloth/CuttingSection';
import { KitsSection } from './finishing/cloth/KitsSection';
import { ColourwaysSection } from './finishing/colourways/ColourwaysSection';
import { PartsList } from './finishing/PartsList';
import { PatternSection } from './finishing/PatternSection';
import { PictureSection } from './finishing/PictureSection';
import { SizesSection } from './finishing/SizesSection';
import { usePattern } from './finishing/usePattern';
import { usePng } from './finishing/usePng';
import { WeightSection } from './finishing/WeightSection';
import { WordsSection } from './finishing/WordsSection';

export function FinishingStep() {
  const part = useApp((app) => app.laid.part);
  // Both may take long: they go on, and their answers stay, while another part is on show.
  const making = usePattern();
  const png = usePng();
  return (
    <>
      <StepHeading title="Finishing" line="Choose what to save or print; it is shown in the large area." />
      <PartsList />
      {part === 'sizes' ? <SizesSection /> : null}
      {part === 'picture' ? <PictureSection png={png} /> : null}
      {part === 'words' ? <WordsSection /> : null}
      {part === 'pattern' ? <PatternSection making={making} /> : null}
      {part === 'cutting' ? <CuttingSection /> : null}
      {part === 'kits' ? <KitsSection /> : null}
      {part === 'weight' ? <WeightSection /> : null}
      {part === 'colourways' ? <ColourwaysSection /> : null}
    </>
  );
}
