// The fabric picked on the large area: its form, what it is used for, another in its place, and its removal. While it has the
// pointer or the focus, its pieces are lit on the wall.
import { Camera, Trash2, X } from 'lucide-react';
import { useMemo, useState } from 'react';
import { changeFabric, placesOf, removeFabric, replaceFabric } from '../../../editing/commands/fabrics';
import { counted } from '../../../model/phrase';
import type { Fabric, FabricId } from '../../../model/project';
import type { AppStore } from '../../../store/app';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { FabricPicker } from '../../fields/FabricPicker';
import { openPhotos } from '../../stage/fabrics/photo/useTakePhotos';
import { useEscape } from '../../useEscape';
import { useSay } from '../../words';
import { FabricForm } from './FabricForm';
import { usesInWords } from './uses';

export function OpenFabric({ fabric }: { fabric: Fabric }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const uses = useMemo(() => usesInWords(project).get(fabric.id) ?? [], [project, fabric.id]);
  const light = (on: boolean) => store.getState().light(on ? fabric.id : null);
  const close = () => {
    store.getState().lay({ fabric: null });
    document.querySelector<HTMLElement>(`[data-fabric="${CSS.escape(fabric.id)}"]`)?.focus();
  };
  useEscape(close);
  return (
    <section
      className="fab-opened"
      aria-label={say('The fabric {name}', { name: fabric.name })}
      onPointerEnter={() => light(true)}
      onPointerLeave={() => light(false)}
      onFocus={() => light(true)}
      onBlur={() => light(false)}
    >
      <div className="spread">
        <h3 tabIndex={-1} data-opened className="fab-opened-name">
          <bdi>{fabric.name}</bdi>
        </h3>
        <button
          data-always
          type="button"
          className="button bare"
          aria-label={say('Close')}
          title={say('Close')}
          onClick={close}
        >
          <X size={16} aria-hidden />
        </button>
      </div>
      <p className="quiet">
        {uses.length > 0 ? uses.map((use) => say(use)).join(' · ') : say('not used yet')}
      </p>
      <div className="stack fab-open">
        <FabricForm
          fabric={fabric}
          onCommit={(to) =>
            store.getState().run(changeFabric(store.getState().project, fabric.id, to), 'here')
          }
        />
        <Replace fabric={fabric} />
        <div className="row">
          <button type="button" className="button" onClick={() => photograph(store, fabric.id)}>
            <Camera size={16} aria-hidden /> {say('Use a photograph')}
          </button>
          <button
            type="button"
            className="button"
            onClick={() => run(removeFabric(store.getState().project, fabric.id))}
          >
            <Trash2 size={16} aria-hidden /> {say('Remove')}
          </button>
        </div>
        <Complaint problems={problems} />
      </div>
    </section>
  );
}

/** Opens the work on photographs, for what this fabric looks like. */
function photograph(store: AppStore, fabric: FabricId): void {
  void import('../../../store/photo/sitting').then(({ sittingOf }) => {
    sittingOf(store).replace(fabric);
    openPhotos(store);
  });
}

/** Replaces the fabric by another one wherever the quilt and its colourways use it. */
function Replace({ fabric }: { fabric: Fabric }) {
  const say = useSay();
  const store = useAppStore();
  const several = useApp((app) => app.project.fabrics.length > 1);
  const places = useApp((app) => placesOf(app.project, fabric.id));
  const [other, setOther] = useState<FabricId | null>(null);
  const [run, problems] = useRun();
  if (!several || places === 0) return null;
  return (
    <div>
      <div className="fab-swap">
        <FabricPicker label="Replace with" value={other} onChange={setOther} />
        <button
          type="button"
          className="button"
          disabled={other === null || other === fabric.id}
          onClick={() => {
            if (other !== null && run(replaceFabric(store.getState().project, fabric.id, other)))
              setOther(null);
          }}
        >
          {say('Replace everywhere')}
        </button>
      </div>
      <p className="quiet">
        {say(
          counted(
            places,
            'In 1 place of the quilt and its colourways. What is on hand stays as it is.',
            'In {count} places of the quilt and its colourways. What is on hand stays as it is.',
          ),
        )}
      </p>
      <Complaint problems={problems} />
    </div>
  );
}
