// When the ways to begin are on show.
import { holdsNothing } from '../../../model/find';
import { useApp } from '../../app';

/** Whether the large area shows the ways to begin: the quilt holds nothing, and this step's own work was not asked for. */
export function useBeginning(): boolean {
  const bare = useApp((app) => holdsNothing(app.project));
  const step = useApp((app) => app.step);
  const aside = useApp((app) => app.drafts.beginning?.values.aside ?? null);
  // What the panel opens on the large area takes their place too.
  const opened = useApp(({ laid }) =>
    step === 'fabrics'
      ? laid.strips || laid.photos
      : step === 'blocks' && (laid.entering !== null || laid.photoBlocks),
  );
  return bare && aside !== step && !opened;
}
