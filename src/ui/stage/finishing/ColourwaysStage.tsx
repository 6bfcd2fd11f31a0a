// The quilt as it is and its colourways at full size side by side, each with its figures, drawn once it comes into sight. An open one
// stands alone beside the quilt.
import { useDeferredValue, useMemo, useRef } from 'react';
import { clothWorn } from '../../../model/colourway';
import type { Colourway, Project } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { CardFigures } from '../../steps/finishing/colourways/CardFigures';
import { useWorn } from '../../steps/finishing/colourways/useWorn';
import { MoreCloth } from '../../wall/ClothDefs';
import { SmallTop } from '../../wall/SmallTop';
import { useSay } from '../../words';
import { useCameInSight } from './useCameInSight';

export function ColourwaysStage() {
  const say = useSay();
  const project = useDeferredValue(useApp((app) => app.project));
  const opened = useApp((app) => app.laid.colourway);
  const shown = opened === null ? project.colourways : project.colourways.filter(({ id }) => id === opened);
  return (
    <>
      <ul
        className={shown.length < 2 ? 'colourway-cards few' : 'colourway-cards'}
        aria-label={say('Colourways side by side')}
      >
        <li className="stage-card colourway-card">
          <p className="colourway-name">{say('As it is')}</p>
          <Top project={project} label={say('The quilt as it is')} />
          <CardFigures project={project} />
        </li>
        {shown.map((colourway) => (
          <Card key={colourway.id} project={project} colourway={colourway} open={colourway.id === opened} />
        ))}
      </ul>
      {project.colourways.length === 0 ? (
        <p className="stage-note">{say('A colourway you make hangs here beside the quilt.')}</p>
      ) : null}
    </>
  );
}

interface CardProps {
  project: Project;
  colourway: Colourway;
  open: boolean;
}

function Card({ project, colourway, open }: CardProps) {
  const say = useSay();
  const { lay } = useAppStore().getState();
  const card = useRef<HTMLLIElement>(null);
  const seen = useCameInSight(card);
  return (
    <li className="stage-card colourway-card" ref={card}>
      <p className="colourway-name spread">
        <bdi>{colourway.name}</bdi>
        <button
          type="button"
          className="button"
          aria-label={say(open ? 'Close {name}' : 'Open {name}', { name: colourway.name })}
          onClick={() => lay({ colourway: open ? null : colourway.id })}
        >
          {say(open ? 'Close' : 'Open')}
        </button>
      </p>
      {seen ? <Worn project={project} colourway={colourway} open={open} /> : <div className="unseen" />}
    </li>
  );
}

function Worn({ project, colourway, open }: CardProps) {
  const say = useSay();
  const shown = useDeferredValue(colourway);
  const worn = useWorn(project, shown);
  const cloth = useMemo(() => clothWorn(shown), [shown]);
  return (
    <>
      {/* That of the open one is on the page already. */}
      {open ? null : <MoreCloth fabrics={cloth} perBlock={project.wedge.perBlock} />}
      <Top project={worn} label={say('The quilt in {name}', { name: colourway.name })} />
      <CardFigures project={worn} />
    </>
  );
}

/** From so many blocks the direction of prints is left out, because several tops are painted at once. */
const MANY_BLOCKS = 40;

function Top({ project, label }: { project: Project; label: string }) {
  return <SmallTop project={project} label={label} near={project.blocks.length < MANY_BLOCKS} />;
}
