// The panel of the opened block: its chosen place with the wedges that could lie there, its findings, corners and progress. The block
// itself lies on the large area (stage/blocks/BlockBench.tsx).
import { Trash2 } from 'lucide-react';
import type { Clash } from '../../../../balance/clashes/clashes';
import { seamsNotNesting } from '../../../../cutting/wedges/nesting';
import { removeBlock } from '../../../../editing/commands/blocks';
import { cellOf } from '../../../../model/find';
import type { Block, BlockId } from '../../../../model/project';
import { useApp, useAppStore } from '../../../app';
import { Complaint, useRun } from '../../../fields/Complaint';
import { SecondChoice } from '../../../stage/blocks/SecondBlock';
import { useEscape } from '../../../useEscape';
import { useSay } from '../../../words';
import { HowFar } from '../HowFar';
import { SewingAdvice } from '../SewingAdvice';
import type { useChoosing } from '../useChoosing';
import { BlockSheet } from './BlockSheet';
import { useBench } from './bench';
import { CornersOfBlock } from './CornersOfBlock';
import { Meetings } from './Meetings';
import { PicturedPanel } from './PicturedPanel';
import { PlacePanel } from './PlacePanel';
import { TiedPhoto } from './TiedPhoto';
import { WholeBlock } from './WholeBlock';
import './workshop.css';

interface Props {
  block: Block;
  clashes: ReadonlyMap<BlockId, readonly Clash[]>;
  choosing: ReturnType<typeof useChoosing>;
}

export function Workshop({ block, clashes, choosing }: Props) {
  const say = useSay();
  const store = useAppStore();
  useEscape(() => store.getState().pick(null));
  const project = useApp((app) => app.project);
  const [run, problems] = useRun();
  const { place, second, tryOn, layBeside } = useBench();
  const slips = seamsNotNesting(project, block);
  return (
    <div className="workshop">
      {block.kind === 'pictured' ? (
        <PicturedPanel block={block} />
      ) : (
        <WholeBlock block={block} choosing={choosing} />
      )}
      {slips.length > 0 ? (
        <p className="verdict">
          {say('Between places {places} the seams are pressed the same way and do not nest.', {
            places: { list: slips.map(([one, next]) => `${one + 1}–${next + 1}`) },
          })}
        </p>
      ) : null}
      {block.kind === 'pictured' ? null : <PlacePanel block={block} place={place} onTry={tryOn} />}
      <Meetings clashes={clashes.get(block.id) ?? []} complete={!block.places.includes(null)} />
      {block.kind === 'pictured' ? null : (
        <SecondChoice block={block} second={second?.id ?? null} onChoose={layBeside} />
      )}
      {block.kind === 'pieced' && block.photo ? <TiedPhoto block={block} photo={block.photo} /> : null}
      <CornersOfBlock block={block} />
      <section aria-labelledby="far-title">
        <h3 id="far-title">{say('Progress')}</h3>
        <HowFar blocks={[block.id]} stage={block.progress} />
      </section>
      <BlockSheet block={block} turn={cellOf(project, block.id)?.turn ?? 0} />
      {block.kind === 'pictured' ? null : <SewingAdvice />}
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
    </div>
  );
}
