// The step Blocks on the large area: the gallery, the opened block, blocks being entered as they are sewn, or
// photographs of blocks.
import { type RefObject, useLayoutEffect, useMemo, useRef } from 'react';
import { useApp } from '../../app';
import { later } from '../../later';
import { Shown } from '../../Shown';
import { clashesByBlock } from '../../steps/blocks/blockWords';
import { useBench } from '../../steps/blocks/workshop/bench';
import { useAnalysis } from '../../useAnalysis';
import { BlockBench } from './BlockBench';
import { BlockGallery } from './BlockGallery';
import './blocksStage.css';
import { EnterBlocks } from './entering/EnterBlocks';

const PHOTOS = later(async () => (await import('../photo/BlockPhotosStage')).default);

export function BlocksStage() {
  const project = useApp((app) => app.project);
  const entering = useApp((app) => app.laid.entering);
  const photos = useApp((app) => app.laid.photoBlocks);
  const { block } = useBench();
  const { balance } = useAnalysis(project);
  const clashes = useMemo(() => clashesByBlock(balance?.clashes ?? []), [balance]);
  const laid = photos ? 'photographs' : entering !== null ? 'entering' : (block?.id ?? null);
  const top = useGalleryScroll(laid);
  // The gallery stays mounted, so that its filter and its place in the list are there when what lies over it is closed.
  return (
    <>
      <div ref={top} />
      {photos ? (
        <Shown part={PHOTOS} given={{}} />
      ) : entering !== null ? (
        <EnterBlocks way={entering} />
      ) : block ? (
        <BlockBench key={block.id} block={block} clashes={clashes} />
      ) : null}
      <div hidden={laid !== null}>
        <BlockGallery clashes={clashes} />
      </div>
    </>
  );
}

/** What is opened starts at its top; the gallery comes back where it was left. Returns the ref of an element in the scrolling area. */
function useGalleryScroll(laid: string | null): RefObject<HTMLDivElement | null> {
  const top = useRef<HTMLDivElement>(null);
  const left = useRef(0);
  const before = useRef<string | null>(null);
  useLayoutEffect(() => {
    const area = top.current?.closest('.work');
    if (area && laid !== before.current) area.scrollTop = laid === null ? left.current : 0;
    before.current = laid;
    if (!area || laid !== null) return;
    const note = () => {
      left.current = area.scrollTop;
    };
    area.addEventListener('scroll', note, { passive: true });
    return () => area.removeEventListener('scroll', note);
  }, [laid]);
  return top;
}
