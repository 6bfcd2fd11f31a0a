// A second block in the workshop, so that wedges can be traded between the two.
import { useId } from 'react';
import type { Clash } from '../../../balance/clashes/clashes';
import { cellOf } from '../../../model/find';
import type { Block, BlockId } from '../../../model/project';
import { useApp } from '../../app';
import { useTrading } from '../../steps/blocks/workshop/trade';
import { useSay } from '../../words';
import { BlockFace } from './BlockFace';

interface ChoiceProps {
  block: Block;
  second: BlockId | null;
  onChoose: (second: BlockId | null) => void;
}

/** The choice of the second block. */
export function SecondChoice({ block, second, onChoose }: ChoiceProps) {
  const say = useSay();
  const id = useId();
  const blocks = useApp((app) => app.project.blocks);
  const others = blocks.filter((one) => one.id !== block.id);
  if (others.length === 0) return null;
  return (
    <div className="field">
      <label htmlFor={id}>{say('Compare with another block')}</label>
      <select
        id={id}
        value={second ?? ''}
        onChange={(event) => onChoose(event.target.value === '' ? null : event.target.value)}
      >
        <option value="">{say('None')}</option>
        {others.map((one) => (
          <option key={one.id} value={one.id}>
            {say('Block {block}', { block: one.number })}
          </option>
        ))}
      </select>
    </div>
  );
}

/** The second block; a place chosen in it is held until its partner in the first block is chosen. */
export function SecondBlock({ block, clashes }: { block: Block; clashes: readonly Clash[] }) {
  const say = useSay();
  const project = useApp((app) => app.project);
  const { hold } = useTrading();
  return (
    <figure className="second-block">
      <BlockFace
        block={block}
        turn={cellOf(project, block.id)?.turn ?? 0}
        clashes={clashes}
        chosen={null}
        onChoose={(place) => hold({ block: block.id, place })}
      />
      <figcaption className="quiet">{say('Block {block}', { block: block.number })}</figcaption>
    </figure>
  );
}
