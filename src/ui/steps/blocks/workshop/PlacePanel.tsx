// The panel of the chosen place: its wedge, commands to take it out or trade it, and the wedges that could lie there.
import { ArrowLeftRight, Undo } from 'lucide-react';
import { wedgeClashes } from '../../../../balance/clashes/wedgeClashes';
import { putWedge } from '../../../../editing/commands/blocks';
import { wedgeBands } from '../../../../geometry/bands';
import { findFabric, findSet } from '../../../../model/find';
import { whyPlacesLocked } from '../../../../model/freedom';
import type { Block, Place, Project } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { Fractions } from '../../../fields/Fractions';
import { useAnalysis } from '../../../useAnalysis';
import { useSay } from '../../../words';
import { wedgeClashWords, wedgeWords } from '../blockWords';
import { WedgePicture } from '../WedgePicture';
import { samePlace, useTrading } from './trade';
import { seamsOf, WedgeOffers } from './WedgeOffers';

interface Props {
  block: Block;
  place: number;
  onTry: (wedge: Place | null) => void;
}

export function PlacePanel({ block, place, onTry }: Props) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const { balance } = useAnalysis(project);
  const { held, hold } = useTrading();
  const [run, problems] = useRun();
  const wedge = block.places[place] ?? null;
  const sewn = whyPlacesLocked(block);
  const isHeld = samePlace(held, { block: block.id, place });
  const seams = seamsOf(balance, project);
  const clashes =
    wedge && seams ? wedgeClashWords(project, wedgeClashes(project, seams, block, place, wedge)) : [];
  return (
    <section className="place-panel" aria-labelledby="place-title">
      <h3 id="place-title" tabIndex={-1}>
        {say('Place {place}: {wedge}', { place: place + 1, wedge: wedgeWords(project, wedge) })}
      </h3>
      {wedge ? (
        <div className="wedge-here">
          <WedgePicture wedge={wedge} height={104} />
          <div className="stack tight">
            <p>{say('From the rim in: {fabrics}.', { fabrics: bandNames(project, wedge) })}</p>
            {clashes.map((one) => (
              <p key={say(one)} className="verdict">
                <Fractions text={say(one)} />
              </p>
            ))}
            {seams && clashes.length === 0 ? (
              <p className="quiet">{say('Meets none of its own fabric.')}</p>
            ) : null}
          </div>
        </div>
      ) : null}
      {sewn ? (
        <p className="quiet">{say(sewn)}</p>
      ) : (
        <div className="row">
          {wedge ? (
            <>
              <button
                type="button"
                className="button"
                aria-pressed={isHeld}
                onClick={() => hold(isHeld ? null : { block: block.id, place })}
              >
                <ArrowLeftRight size={16} aria-hidden /> {say('Trade with another place')}
              </button>
              <button
                type="button"
                className="button"
                onClick={() => run(putWedge(store.getState().project, block.id, place, null))}
              >
                <Undo size={16} aria-hidden /> {say('Take it out')}
              </button>
            </>
          ) : null}
        </div>
      )}
      <Complaint problems={problems} />
      {sewn ? null : <WedgeOffers block={block} place={place} onTry={onTry} />}
    </section>
  );
}

/** Names of a wedge's fabrics from the rim inwards; neighbours of the same fabric are named once. */
export function bandNames(project: Project, wedge: Place): { list: string[] } {
  const set = findSet(project, wedge.set);
  const bands = set ? wedgeBands(set.strips, wedge.tip, project.wedge) : [];
  return { list: bands.map((band) => findFabric(project, band.fabric)?.name ?? '') };
}
