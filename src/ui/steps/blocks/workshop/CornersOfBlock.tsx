// The corners of one block: their fabric (the quilt's or the block's own), and the places they lie on.
import { RotateCcw, RotateCw } from 'lucide-react';
import { cornerPlaceWords } from '../../../../drawing/cornerPlaceWords';
import { setCornerFabric } from '../../../../editing/commands/blocks';
import { turnByOneWedge } from '../../../../editing/commands/wall';
import { cellIndexOf, findFabric } from '../../../../model/find';
import { cornersOn, whyCornersLocked } from '../../../../model/freedom';
import type { Block } from '../../../../model/project';
import { cornerFabricOf } from '../../../../model/wallCells';
import { useApp, useAppStore } from '../../../app';
import { Choice } from '../../../fields/Choice';
import { Complaint, useRun } from '../../../fields/Complaint';
import { FabricPicker } from '../../../fields/FabricPicker';
import { useSay } from '../../../words';

export function CornersOfBlock({ block }: { block: Block }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const [turn, turnProblems] = useRun();
  const quilts = cornerFabricOf(project, { cornerFabric: null }, cellIndexOf(project, block.id));
  const own = block.cornerFabric !== null;
  // What a picture shows of them may be put right.
  const on = cornersOn(block) && block.kind === 'pieced';
  const reason = whyCornersLocked(project, block);
  return (
    <section aria-labelledby="corners-title">
      <h3 id="corners-title">{say('Corners')}</h3>
      <div className="stack">
        <Choice
          label="Fabric of the corners"
          value={own ? 'own' : 'quilt'}
          options={[
            { value: 'quilt', label: 'The quilt’s' },
            { value: 'own', label: 'Its own' },
          ]}
          disabled={on}
          onChange={(next) =>
            run(setCornerFabric(store.getState().project, block.id, next === 'own' ? quilts : null))
          }
        />
        {own ? (
          <FabricPicker
            label="Fabric of this block’s corners"
            value={block.cornerFabric}
            disabled={on}
            onChange={(fabric) => run(setCornerFabric(store.getState().project, block.id, fabric))}
          />
        ) : (
          <p className="quiet">
            <bdi>{findFabric(project, quilts)?.name}</bdi>
          </p>
        )}
        <Complaint problems={problems} />
        <p>{say('They lie on places {places}.', { places: cornerPlaceWords(block, project.wedge) })}</p>
        {reason ? (
          <p className="quiet">{say(reason)}</p>
        ) : (
          <div className="row">
            <button
              type="button"
              className="button"
              onClick={() => turn(turnByOneWedge(store.getState().project, block.id, -1))}
            >
              <RotateCcw size={16} aria-hidden /> {say('Corners one wedge back')}
            </button>
            <button
              type="button"
              className="button"
              onClick={() => turn(turnByOneWedge(store.getState().project, block.id, 1))}
            >
              <RotateCw size={16} aria-hidden /> {say('Corners one wedge forward')}
            </button>
          </div>
        )}
        <Complaint problems={turnProblems} />
      </div>
    </section>
  );
}
