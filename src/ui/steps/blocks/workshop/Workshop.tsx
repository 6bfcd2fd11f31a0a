// The workshop of the picked block: its places, the wedges that could lie in them, its corners and its progress.
import { ArrowLeft, ChevronLeft, ChevronRight, Trash2 } from 'lucide-react';
import { useState } from 'react';
import type { Clash } from '../../../../balance/clashes/clashes';
import { seamsNotNesting } from '../../../../cutting/wedges/nesting';
import { putWedge, removeBlock } from '../../../../editing/commands/blocks';
import { cellIndexOf, cellOf, findBlock } from '../../../../model/find';
import type { Block, BlockId, Place } from '../../../../model/project';
import { rowAndColumn } from '../../../../model/wallCells';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { useSay } from '../../../words';
import { HowFar } from '../HowFar';
import { SewingAdvice } from '../SewingAdvice';
import { BlockFace } from './BlockFace';
import { BlockSheet } from './BlockSheet';
import { CornersOfBlock } from './CornersOfBlock';
import { Meetings } from './Meetings';
import { PlacePanel } from './PlacePanel';
import { SecondBlock, SecondChoice } from './SecondBlock';
import { TradeBar } from './TradeBar';
import { WholeBlock } from './WholeBlock';
import './workshop.css';

interface Props {
  block: Block;
  clashes: ReadonlyMap<BlockId, readonly Clash[]>;
}

export function Workshop({ block, clashes }: Props) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const [chosen, setChosen] = useState(0);
  const [trying, setTrying] = useState<Place | null>(null);
  const [second, setSecond] = useState<BlockId | null>(null);
  const other = second === null ? undefined : findBlock(project, second);
  const place = Math.min(chosen, block.places.length - 1);
  const mine = clashes.get(block.id) ?? [];
  const slips = seamsNotNesting(project, block);
  return (
    <div className="workshop">
      <WorkshopHead block={block} />
      <div className={other ? 'faces two' : 'faces'}>
        <BlockFace
          block={block}
          turn={cellOf(project, block.id)?.turn ?? 0}
          clashes={mine}
          chosen={place}
          onChoose={setChosen}
          trying={trying ? { place, wedge: trying } : null}
          onEmpty={(at) => run(putWedge(store.getState().project, block.id, at, null))}
        />
        {other ? <SecondBlock block={other} clashes={clashes.get(other.id) ?? []} /> : null}
      </div>
      <p className="quiet legend">
        {say('An arrow shows the way a wedge’s seams are pressed; opposite arrows nest.')}
      </p>
      <TradeBar />
      <SecondChoice block={block} second={other?.id ?? null} onChoose={setSecond} />
      {other ? (
        <p className="quiet legend">
          {say('Carry a wedge from one block to the other, or choose one beside and then its partner here.')}
        </p>
      ) : null}
      <WholeBlock block={block} />
      {slips.length > 0 ? (
        <p className="verdict">
          {say('Between places {places} the seams are pressed the same way and do not nest.', {
            places: { list: slips.map(([one, next]) => `${one + 1}–${next + 1}`) },
          })}
        </p>
      ) : null}
      <PlacePanel block={block} place={place} onTry={setTrying} />
      <Meetings clashes={mine} complete={!block.places.includes(null)} />
      <CornersOfBlock block={block} />
      <section aria-labelledby="far-title">
        <h3 id="far-title">{say('How far it is')}</h3>
        <HowFar blocks={[block.id]} stage={block.progress} />
      </section>
      <BlockSheet block={block} turn={cellOf(project, block.id)?.turn ?? 0} />
      <section aria-label={say('Remove it')}>
        <div className="row">
          <button
            type="button"
            className="button"
            onClick={() => run(removeBlock(store.getState().project, block.id))}
          >
            <Trash2 size={16} aria-hidden /> {say('Remove block {block}', { block: block.number })}
          </button>
        </div>
        <Complaint problems={problems} />
      </section>
      <SewingAdvice />
    </div>
  );
}

function WorkshopHead({ block }: { block: Block }) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const cell = cellIndexOf(project, block.id);
  const ordered = project.blocks.toSorted((one, other) => one.number - other.number);
  const at = ordered.findIndex((one) => one.id === block.id);
  const step = (by: number, name: string, icon: React.ReactNode) => (
    <button
      type="button"
      className="button bare"
      aria-label={name}
      title={name}
      disabled={ordered[at + by] === undefined}
      onClick={() => store.getState().pick(ordered[at + by]?.id ?? null)}
    >
      {icon}
    </button>
  );
  return (
    <header className="workshop-head">
      <div className="spread">
        <button type="button" className="button bare back" onClick={() => store.getState().pick(null)}>
          <ArrowLeft size={16} aria-hidden /> {say('All blocks')}
        </button>
        <div className="row">
          {step(-1, say('The block before'), <ChevronLeft size={18} aria-hidden />)}
          {step(1, say('The next block'), <ChevronRight size={18} aria-hidden />)}
        </div>
      </div>
      <div className="title">
        <h2>{say('Block {block}', { block: block.number })}</h2>
        <p>
          {cell < 0
            ? say('On the side table')
            : say('Row {row}, column {column}', rowAndColumn(cell, project))}
        </p>
      </div>
    </header>
  );
}
