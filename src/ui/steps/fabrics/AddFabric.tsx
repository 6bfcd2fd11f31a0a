// The form of a new fabric. After it is added, the form begins again for the next one.
import { Plus } from 'lucide-react';
import { useEffect, useRef, useState } from 'react';
import { meanColour } from '../../../cloth/likeness';
import { printMix } from '../../../cloth/print/printMix';
import { freshColours } from '../../../cloth/standIns';
import { addFabric } from '../../../editing/commands/fabrics';
import { phrase } from '../../../model/phrase';
import type { Fabric } from '../../../model/project';
import type { Problem } from '../../../model/result';
import { useApp, useAppStore } from '../../app';
import { Apart } from '../../fields/Apart';
import { Complaint } from '../../fields/Complaint';
import { useEscape } from '../../useEscape';
import { useSay } from '../../words';
import type { NewFabric } from './ClothSample';
import { FabricForm } from './FabricForm';
import type { useDraft } from './useDraft';

const MOST_FABRICS = 400;

export function AddFabric({ draft }: { draft: ReturnType<typeof useDraft<'fabric'>> }) {
  const say = useSay();
  useEscape(() => draft.setOpen(false));
  const store = useAppStore();
  const count = useApp((app) => app.project.fabrics.length);
  const form = useRef<HTMLFormElement>(null);
  const [added, setAdded] = useState(0);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const { values: fresh, takesFocus } = draft;
  const begun = fresh.name !== '' || fresh.background || fresh.cloth.kind !== 'plain';
  // Moves the focus to the name: at first, and for the next fabric.
  useEffect(() => {
    if (takesFocus || added > 0) nameField(form.current)?.focus();
  }, [added, takesFocus]);
  const startAnew = () => {
    draft.change(firstFabric(store.getState().project.fabrics));
    setProblems([]);
    setAdded(added + 1);
  };
  const add = () => {
    if (fresh.name === '') {
      setProblems([{ code: 'empty', path: 'name', message: phrase('Give the fabric a name first.') }]);
      nameField(form.current)?.focus();
      return;
    }
    if (count >= MOST_FABRICS) {
      const message = phrase('A quilt holds at most {most} fabrics.', { most: MOST_FABRICS });
      setProblems([{ code: 'too-many', path: 'fabrics', message }]);
      return;
    }
    const refused = store.getState().run(addFabric(fresh), 'here');
    setProblems(refused);
    if (refused.length > 0) return;
    store.getState().announce(phrase('{name} is in the list.', { name: fresh.name }));
    startAnew();
  };
  return (
    <form
      ref={form}
      className="stack fab-open fab-new"
      aria-label={say('A new fabric')}
      // A refusal no longer applies once the form changes.
      onInput={() => setProblems([])}
      onSubmit={(event) => {
        event.preventDefault();
        // Enter in a field takes the field first, then adds the fabric.
        add();
      }}
    >
      <FabricForm
        key={added}
        fabric={fresh}
        onCommit={(to) => {
          draft.change(to);
          setProblems([]);
          return [];
        }}
      />
      <Complaint problems={problems} />
      <div className="row">
        <button type="submit" className="button solid">
          <Plus size={16} aria-hidden /> {say('Add this fabric')}
        </button>
        {begun ? (
          <button data-always type="button" className="button" onClick={() => startAnew()}>
            {say('Clear')}
          </button>
        ) : null}
        <button data-always type="button" className="button" onClick={() => draft.setOpen(false)}>
          {say('Done')}
          <Apart of={say('A new fabric')} />
        </button>
      </div>
    </form>
  );
}

function nameField(form: HTMLFormElement | null) {
  return form?.querySelector<HTMLInputElement>('input:not([type])');
}

/** The first values of a new fabric beside those there are. */
export function firstFabric(fabrics: readonly Fabric[]): NewFabric {
  return firstFabrics(fabrics, [''])[0]!;
}

/** The first values of new fabrics of these names. */
export function firstFabrics(fabrics: readonly Fabric[], names: readonly string[]): NewFabric[] {
  const taken = fabrics.map((fabric) => meanColour(printMix(fabric)));
  const colours = freshColours(taken, names.length);
  return names.map((name, at) => ({
    name,
    colour: colours[at]!,
    cloth: { kind: 'plain' },
    background: false,
  }));
}
