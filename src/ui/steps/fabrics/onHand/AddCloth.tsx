// The form that adds cloth to the list; each kind begins with its usual size.
import { addCloth } from '../../../../editing/commands/clothOnHand';
import type { Project } from '../../../../model/project';
import type { DraftOf } from '../../../../store/drafts';
import { useApp } from '../../../app';
import type { useDraft } from '../useDraft';
import { AddForm } from './AddForm';
import { ClothFields } from './ClothFields';
import { usualSize } from './clothWords';

/** The first values of the form. */
export function firstCloth(project: Project): DraftOf<'cloth'>['values'] {
  return { fabric: null, kind: 'yardage', ...usualSize('yardage', project), count: 1 };
}

export function AddCloth({ draft }: { draft: ReturnType<typeof useDraft<'cloth'>> }) {
  const quilt = useApp((app) => app.project);
  const { values, change } = draft;
  return (
    <AddForm
      title="Add fabric on hand"
      adds="Add this piece"
      noFabric="Choose the fabric of this piece."
      fabric={values.fabric}
      onFabric={(fabric) => change({ fabric })}
      takesFocus={draft.takesFocus}
      command={(project, fabric) => addCloth(project, { ...values, fabric })}
      onClose={() => draft.setOpen(false)}
    >
      <ClothFields
        cloth={values}
        onChange={(to) => {
          change(to);
          return [];
        }}
        onKind={(kind) => change({ kind, ...usualSize(kind, quilt) })}
      />
    </AddForm>
  );
}
