// Step 4, blocks: their number and the choice of wedges; or what belongs to the opened block, to entering sewn blocks, or to photographs of them. The blocks
// themselves lie on the large area (stage/blocks/).
import { Check, Plus } from 'lucide-react';
import { useEffect, useMemo, useRef } from 'react';
import { blocksOn } from '../../cutting/top/sizeOffers';
import { blocksAllowed, openBlocks } from '../../editing/commands/chooseWedges';
import { counted, phrase } from '../../model/phrase';
import type { Block } from '../../model/project';
import { useApp, useAppStore } from '../app';
import { useAnalysis } from '../useAnalysis';
import { useSay } from '../words';
import { clashesByBlock } from './blocks/blockWords';
import './blocks/blocks.css';
import { EnteringHelp } from './blocks/EnteringHelp';
import { ChooseWedges } from './blocks/list/ChooseWedges';
import { HowMany } from './blocks/list/HowMany';
import { useChoosing } from './blocks/useChoosing';
import { BlockHeading } from './blocks/workshop/BlockHeading';
import { useBench } from './blocks/workshop/bench';
import { Workshop } from './blocks/workshop/Workshop';
import { Caution } from './Caution';
import { StepFoot } from './StepFoot';
import { StepHeading } from './StepHeading';

export function BlocksStep() {
  const entering = useApp((app) => app.laid.entering !== null);
  const photos = useApp((app) => app.laid.photoBlocks);
  const { block } = useBench();
  const top = useRef<HTMLDivElement>(null);
  // Scrolls to the start when another block is picked.
  // biome-ignore lint/correctness/useExhaustiveDependencies: when the picked block changes
  useEffect(() => {
    // In braces, because newer browsers return a promise here, which an effect must not return.
    top.current?.scrollIntoView({ block: 'end' });
  }, [block?.id, entering, photos]);
  return (
    <>
      <div ref={top} />
      {photos ? (
        <Photographed />
      ) : entering ? (
        <Entering />
      ) : block ? (
        <Opened key={block.id} block={block} />
      ) : (
        <AllBlocks />
      )}
    </>
  );
}

function Entering() {
  const say = useSay();
  const store = useAppStore();
  const there = useApp((app) => app.project.blocks.filter(({ places }) => !places.includes(null)).length);
  const entered =
    there === 0
      ? phrase('No block is entered yet.')
      : counted(there, '1 whole block so far.', '{count} whole blocks so far.');
  return (
    <>
      <StepHeading
        title="Blocks"
        line="Enter sewn blocks as they are: one key to a wedge, clockwise from the top."
      />
      <StepFoot instead={entered}>
        <button
          type="button"
          className="button solid"
          onClick={() => store.getState().lay({ entering: null, into: null })}
        >
          <Check size={16} aria-hidden /> {say('Done')}
        </button>
      </StepFoot>
      <EnteringHelp />
    </>
  );
}

function Photographed() {
  const say = useSay();
  const store = useAppStore();
  return (
    <>
      <StepHeading
        title="Blocks"
        line="Photograph blocks that are sewn already. They are read wedge by wedge."
      />
      <StepFoot instead={phrase('Corners first, then what is doubtful.')}>
        <button
          type="button"
          className="button solid"
          onClick={() => store.getState().lay({ photoBlocks: false })}
        >
          <Check size={16} aria-hidden /> {say('Done')}
        </button>
      </StepFoot>
      <section aria-labelledby="photo-help">
        <h3 id="photo-help">{say('A good photograph')}</h3>
        <ul className="plain-list">
          <li>{say('From straight above, with all of the block in it and some table round it.')}</li>
          <li>{say('By daylight without sun on it, pressed flat.')}</li>
          <li>{say('Enter the fabrics first: the block is read by them.')}</li>
        </ul>
        <p className="quiet">{say('Photographs stay on this machine.')}</p>
      </section>
    </>
  );
}

function Opened({ block }: { block: Block }) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const { balance } = useAnalysis(project);
  const clashes = useMemo(() => clashesByBlock(balance?.clashes ?? []), [balance]);
  const choosing = useChoosing();
  const unfilled = block.places.includes(null) && openBlocks(project).includes(block.id);
  return (
    <>
      <BlockHeading block={block} />
      <StepFoot>
        {unfilled ? (
          <button
            type="button"
            className="button solid"
            aria-disabled={choosing.busy}
            onClick={() => choosing.choose([block.id])}
          >
            {say('Choose its wedges')}
          </button>
        ) : null}
      </StepFoot>
      <Workshop block={block} clashes={clashes} choosing={choosing} />
    </>
  );
}

function AllBlocks() {
  const say = useSay();
  const project = useApp((app) => app.project);
  const choosing = useChoosing();
  const open = new Set(openBlocks(project));
  // Blocks for which there are wedges, and places on the wall.
  const places = blocksOn(project, project.wall.rows, project.wall.columns);
  const more = Math.max(0, Math.min(blocksAllowed(project), places) - project.blocks.length);
  const unfilled = project.blocks.some(({ id, places }) => open.has(id) && places.includes(null));
  return (
    <>
      <StepHeading
        title="Blocks"
        line="Wedges go round a block tip up and tip down in turn, so that their seams nest."
      />
      <StepFoot>
        {unfilled ? (
          <button
            type="button"
            className="button solid"
            aria-disabled={choosing.busy}
            onClick={choosing.fill}
          >
            {say('Fill empty blocks')}
          </button>
        ) : more > 0 ? (
          <button
            type="button"
            className="button solid"
            aria-disabled={choosing.busy}
            onClick={() => choosing.add(more)}
          >
            <Plus size={16} aria-hidden /> {say(counted(more, 'Add 1 block', 'Add {count} blocks'))}
          </button>
        ) : null}
      </StepFoot>
      <HowMany choosing={choosing} inFoot={unfilled ? 0 : more} />
      <ChooseWedges choosing={choosing} />
      <Caution about={['sewing', 'pressing']} folded />
    </>
  );
}
