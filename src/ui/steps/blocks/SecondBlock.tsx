// Another block laid beside the one in the workshop, so that wedges can be traded between the two.
import { useId, useState } from 'react';
import type { Clash } from '../../../balance/clashes';
import { cellOf, findBlock } from '../../../model/find';
import type { Block, BlockId } from '../../../model/project';
import { useApp } from '../../app';
import { useSay } from '../../words';
import { BlockFace } from './BlockFace';
import { useTrading } from './trade';

export function SecondBlock({
  block,
  clashes,
}: {
  block: Block;
  clashes: ReadonlyMap<BlockId, readonly Clash[]>;
}) {
  const say = useSay();
  const id = useId();
  const project = useApp((app) => app.project);
  const { hold } = useTrading();
  const [beside, setBeside] = useState<BlockId | null>(null);
  const others = project.blocks.filter((one) => one.id !== block.id);
  const other = beside === block.id || beside === null ? undefined : findBlock(project, beside);
  if (others.length === 0) return null;
  return (
    <section>
      <div className="field">
        <label htmlFor={id}>{say('Lay another block beside it, to trade between the two')}</label>
        <select
          id={id}
          value={other?.id ?? ''}
          onChange={(event) => setBeside(event.target.value === '' ? null : event.target.value)}
        >
          <option value="">{say('None')}</option>
          {others.map((one) => (
            <option key={one.id} value={one.id}>
              {say('Block {block}', { block: one.number })}
            </option>
          ))}
        </select>
      </div>
      {other ? (
        <>
          <BlockFace
            block={other}
            turn={cellOf(project, other.id)?.turn ?? 0}
            clashes={clashes.get(other.id) ?? []}
            chosen={null}
            onChoose={(place) => hold({ block: other.id, place })}
          />
          <p className="quiet legend">
            {say('Carry a wedge from one block to the other, or choose one here and then its partner above.')}
          </p>
        </>
      ) : null}
    </section>
  );
}
