// Why a strip was not put down here, with the way round it. It goes when the quilt changes or another strip is taken up.
import { X } from 'lucide-react';
import { useLayoutEffect, useMemo, useRef } from 'react';
import { wayRound } from '../../../editing/commands/sets/carryStrip';
import { useAppStore } from '../../app';
import { Fractions } from '../../fields/Fractions';
import { useEscape } from '../../useEscape';
import { useSay } from '../../words';
import type { RefusedDrop } from './useCarry';

export function RefusedStrip({ refused, onLeave }: { refused: RefusedDrop; onLeave: () => void }) {
  const say = useSay();
  useEscape(onLeave);
  const store = useAppStore();
  const way = useMemo(() => wayRound(refused.of, refused.from, refused.to), [refused]);
  const card = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    // Wider than a set, it hangs to the left of a set at the right edge of the table.
    const over = card.current?.closest('[data-lay-scroll]')?.getBoundingClientRect().right ?? 0;
    card.current?.classList.toggle('leftward', card.current.getBoundingClientRect().right > over);
  }, []);
  return (
    <div className="lay-refused" role="alert" ref={card}>
      <p className="complaint">
        <Fractions text={say(refused.problem.message)} />
      </p>
      <div className="row">
        {way ? (
          <button type="button" className="button" onClick={() => store.getState().run(way.command)}>
            <span>
              <Fractions text={say(way.words)} />
            </span>
          </button>
        ) : null}
        <button type="button" className="button bare" aria-label={say('Cancel')} title={say('Cancel')} onClick={onLeave}>
          <X size={16} aria-hidden />
        </button>
      </div>
    </div>
  ); // biome-ignore format: short
}
