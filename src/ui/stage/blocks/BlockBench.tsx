// The opened block on the large area: large, with its neighbours on the wall round it, and the wedges left over beside it.
import { ArrowLeft, ChevronLeft, ChevronRight, Keyboard } from 'lucide-react';
import { type ReactNode, useCallback, useMemo } from 'react';
import type { Clash } from '../../../balance/clashes/clashes';
import { putWedge } from '../../../editing/commands/blocks';
import { finishedBlock } from '../../../geometry/wedge';
import { cellOf } from '../../../model/find';
import { whyPlacesLocked } from '../../../model/freedom';
import type { Block, BlockId, Place } from '../../../model/project';
import { useApp, useAppStore } from '../../app';
import { Complaint, useRun } from '../../fields/Complaint';
import { useBench } from '../../steps/blocks/workshop/bench';
import { useTrading } from '../../steps/blocks/workshop/trade';
import { useAnalysis } from '../../useAnalysis';
import { useSay } from '../../words';
import { BlockFace } from './BlockFace';
import { marginsRound, Neighbours, OutsideMarks } from './Neighbours';
import { SecondBlock } from './SecondBlock';
import { TradeBar } from './TradeBar';
import { WedgeTray } from './WedgeTray';

/** How much of the neighbours is shown, as a share of the block. */
const AROUND = 0.17;
const NO_CLASHES: readonly Clash[] = [];

interface Props {
  block: Block;
  clashes: ReadonlyMap<BlockId, readonly Clash[]>;
}

export function BlockBench({ block, clashes }: Props) {
  const say = useSay();
  const store = useAppStore();
  const project = useApp((app) => app.project);
  const { balance } = useAnalysis(project);
  const { place, trying, second, choose, tryOn } = useBench();
  const { carried, press, problems: refused } = useTrading();
  const [run, problems, clear] = useRun();
  const cell = cellOf(project, block.id);
  const { width, height } = finishedBlock(project.wedge);
  const { sashing } = project.setting;
  const margin = Math.min(width, height) * AROUND + (sashing.where === 'none' ? 0 : sashing.width);
  const alone = !cell || second !== null;
  const margins = useMemo(() => marginsRound(project, block.id, margin), [project, block.id, margin]);
  const outside = useMemo(
    () =>
      (balance?.project === project ? balance.clashes : NO_CLASHES)
        .filter(
          (clash) =>
            (clash.kind === 'facing' || clash.kind === 'setting') &&
            clash.blocks.includes(block.id) &&
            clash.settingPart !== 'corner',
        )
        .flatMap(({ marks }) => marks),
    [balance, project, block.id],
  );
  const sewn = whyPlacesLocked(block) !== null;
  const take = useCallback(
    (wedge: Place) => {
      tryOn(null);
      const now = store.getState().project;
      if (!run(putWedge(now, block.id, place, wedge))) return;
      const after = store.getState().project.blocks.find(({ id }) => id === block.id)!.places;
      const next = after.map((_, on) => (place + on + 1) % after.length).find((at) => after[at] === null);
      if (next !== undefined) choose(next);
    },
    [store, run, block.id, place, choose, tryOn],
  );
  return (
    <div className="bench">
      <BenchHead block={block} sewn={sewn} />
      <div className="over-head">
        <TradeBar />
      </div>
      <Complaint problems={problems.length > 0 ? problems : refused} />
      <div className={second ? 'faces two' : 'faces'}>
        <BlockFace
          block={block}
          turn={cell?.turn ?? 0}
          clashes={clashes.get(block.id) ?? NO_CLASHES}
          chosen={place}
          onChoose={(at) => {
            clear();
            choose(at);
          }}
          trying={trying ? { place, wedge: trying } : null}
          onEmpty={(at) => run(putWedge(store.getState().project, block.id, at, null))}
          {...(alone ? {} : { margins })}
          around={
            cell && second === null ? <Neighbours project={project} block={block.id} margin={margin} /> : null
          }
          onEdge={
            second === null && trying === null ? (
              <OutsideMarks project={project} block={block.id} marks={outside} />
            ) : null
          }
        />
        {second ? <SecondBlock block={second} clashes={clashes.get(second.id) ?? NO_CLASHES} /> : null}
      </div>
      <p className="bench-legend">
        {second
          ? say('Drag a wedge from one block to the other, or choose one there and then its partner here.')
          : sewn
            ? say('It is sewn, so its wedges stay.')
            : say('Press a place to choose it; drag its wedge to another to trade the two.')}{' '}
        {block.kind === 'pictured'
          ? null
          : say('An arrow shows the way a wedge’s seams are pressed; opposite arrows nest.')}
      </p>
      {sewn ? null : (
        <WedgeTray onTake={take} onTry={tryOn} onPress={press} over={carried?.over === 'tray'} />
      )}
    </div>
  );
}

function BenchHead({ block, sewn }: { block: Block; sewn: boolean }) {
  const say = useSay();
  const store = useAppStore();
  const blocks = useApp((app) => app.project.blocks);
  const ordered = blocks.toSorted((one, other) => one.number - other.number);
  const at = ordered.findIndex((one) => one.id === block.id);
  const step = (by: number, name: string, icon: ReactNode) => (
    <button
      type="button"
      className="button"
      aria-label={name}
      title={name}
      disabled={ordered[at + by] === undefined}
      onClick={() => store.getState().pick(ordered[at + by]?.id ?? null)}
    >
      {icon}
    </button>
  );
  return (
    <header className="bench-head">
      <button type="button" className="button back" onClick={() => store.getState().pick(null)}>
        <ArrowLeft size={16} aria-hidden /> {say('All blocks')}
      </button>
      {step(-1, say('Previous block'), <ChevronLeft size={18} aria-hidden />)}
      <span className="bench-name">{say('Block {block}', { block: block.number })}</span>
      {step(1, say('Next block'), <ChevronRight size={18} aria-hidden />)}
      {sewn ? null : (
        <button
          type="button"
          className="button enter"
          aria-label={say('Enter as sewn')}
          title={say('Enter as sewn')}
          onClick={() => store.getState().lay({ entering: 'keys', into: block.id })}
        >
          <Keyboard size={16} aria-hidden /> <span className="wide">{say('Enter as sewn')}</span>
        </button>
      )}
    </header>
  );
}
