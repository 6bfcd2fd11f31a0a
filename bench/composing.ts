// Making sets and composing blocks: the proof must hold at every size, and the time must grow no faster than the quilt.
// Times are compared within one run (400 blocks against 80), so that the machine does not matter.
import { composeBlocks } from '../src/arrange/choose/compose';
import { wedgeOffers } from '../src/arrange/mend/wedgeOffers';
import { analyse } from '../src/balance/analyse';
import { makeSets } from '../src/cutting/sets/randomSets';
import { createBlock, createProject } from '../src/model/create';
import type { Fabric, Project } from '../src/model/project';
import { scrappyTop } from '../tests/balance/tops';
import type { BenchRow } from './row';

const FABRICS = 30;

function emptyBlocks(blocks: number): Project {
  const fabrics: Fabric[] = Array.from({ length: FABRICS }, (_, at) => ({
    id: `f${at + 1}`,
    name: `Fabric ${at + 1}`,
    colour: `#${(((at * 2_654_435_761) >>> 8) & 0xffffff).toString(16).padStart(6, '0')}`,
    cloth: { kind: 'plain' },
    background: false,
  }));
  const each = Math.ceil(blocks / 8) + 1;
  const stripsOnHand = fabrics.flatMap((fabric) =>
    [1, 1.5, 2].map((width) => ({
      id: `${fabric.id} ${width}`,
      fabric: fabric.id,
      width,
      length: 40,
      count: width === 2 ? Math.ceil(each / 2) : each,
    })),
  );
  const plain = { ...createProject('bench', 'Bench'), fabrics, stripsOnHand };
  const { sets } = makeSets({
    fabrics,
    lookalikes: 10,
    stripsOnHand,
    wedge: plain.wedge,
    keep: [],
    want: { blocks },
    seed: 1,
  });
  let project: Project = { ...plain, stripSets: sets };
  for (let block = 0; block < blocks; block += 1) {
    project = { ...project, blocks: [...project.blocks, createBlock(project)] };
  }
  return project;
}

function timed(blocks: number) {
  const project = emptyBlocks(blocks);
  const start = performance.now();
  const made = composeBlocks(project, blocks, 1);
  return { milliseconds: performance.now() - start, made };
}

export function benchComposing(): BenchRow[] {
  timed(6); // warm-up
  const small = timed(80);
  const large = timed(400);
  const ratio = large.milliseconds / small.milliseconds;
  return [
    ...[small, large].map(({ made }) => ({
      name: `composing ${made.made.length} blocks: rims that meet themselves`,
      toReach: 'none, proved',
      measured: `${made.rimClashes}, ${made.proved}`,
      ok: made.proved === 'none',
    })),
    {
      name: 'composing 400 blocks against 80, time',
      toReach: '≤ 10 times',
      measured: `${ratio.toFixed(1)} times`,
      ok: ratio <= 10,
    },
    offersForPlace(),
  ];
}

/** Wedges for a place with what each does to the whole top; a trade is looked at in every place of every other block. */
function offersForPlace(): BenchRow {
  const top = scrappyTop({ rows: 20, columns: 20, seed: 3 });
  const project = { ...top, stripSets: top.stripSets.map((set) => ({ ...set, length: 120 })) };
  const start = performance.now();
  const analysis = analyse(project);
  const analysed = performance.now() - start;
  const times = project.blocks.slice(0, 9).map((block, at) => {
    const from = performance.now();
    wedgeOffers(analysis, block, at % 8);
    return performance.now() - from;
  });
  const part = times.toSorted((one, other) => one - other)[4]! / analysed;
  return {
    name: 'wedges on offer for a place with their effect on the whole top, 400 blocks, against the analysis',
    toReach: '≤ ½ of its time',
    measured: `${part.toFixed(2)} of its time`,
    ok: part <= 0.5,
  };
}
