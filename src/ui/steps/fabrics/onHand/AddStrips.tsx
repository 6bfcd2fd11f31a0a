// The form that adds cut strips to the list, with buttons for the usual widths.
import { addStrips } from '../../../../editing/commands/fabrics';
import type { Inches } from '../../../../model/units';
import type { DraftOf } from '../../../../store/drafts';
import { Fractions } from '../../../fields/Fractions';
import { useSay } from '../../../words';
import type { useDraft } from '../useDraft';
import { AddForm } from './AddForm';
import { StripFields } from './StripFields';

const USUAL_WIDTHS = [1, 1.5, 2, 2.5] as const;

/** The first values of the form; `usable` is the usable width of fabric, inches. */
export function firstStrips(usable: Inches): DraftOf<'strips'>['values'] {
  return { fabric: null, width: 1.5, length: usable, count: 2 };
}

export function AddStrips({ draft }: { draft: ReturnType<typeof useDraft<'strips'>> }) {
  const say = useSay();
  const { values, change } = draft;
  return (
    <AddForm
      title="Add strips"
      adds="Add these strips"
      noFabric="Choose the fabric these strips are of."
      fabric={values.fabric}
      onFabric={(fabric) => change({ fabric })}
      takesFocus={draft.takesFocus}
      command={(project, fabric) => addStrips(project, { ...values, fabric })}
      onClose={() => draft.setOpen(false)}
    >
      <StripFields
        strips={values}
        fewest={1}
        onChange={(to) => {
          change(to);
          return [];
        }}
      />
      <div className="row fab-usual" role="toolbar" aria-label={say('Usual cut widths')}>
        {USUAL_WIDTHS.map((usual) => (
          <button
            key={usual}
            type="button"
            className="button"
            aria-pressed={Math.abs(usual - values.width) < 1e-9}
            onClick={() => change({ width: usual })}
          >
            <span>
              <Fractions text={say('{width}', { width: { inches: usual } })} />
            </span>
          </button>
        ))}
      </div>
      <p className="quiet">
        <Fractions
          text={say('Precut strips: add them at {width} and split them lengthwise in the list.', {
            width: { inches: 2.5 },
          })}
        />
      </p>
    </AddForm>
  );
}
