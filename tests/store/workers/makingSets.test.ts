// Making sets beside the page: the worker's answer arrives once, a broken one becomes a reason, a stopped one nothing.
import { describe, expect, it } from 'vitest';
import { makeSets, type SetMaking, setMakingOf } from '../../../src/cutting/sets/randomSets';
import { createProject } from '../../../src/model/create';
import { speak } from '../../../src/model/phrase';
import { type SetsWorker, startMaking } from '../../../src/store/workers/makingSets';

/** A worker in this very thread: answers as soon as the message is posted and the caller is done. */
function workerThat(work: (worker: SetsWorker, making: SetMaking) => void): {
  make: () => SetsWorker;
  ended: () => number;
} {
  let ended = 0;
  const worker: SetsWorker = {
    onmessage: null,
    onerror: null,
    postMessage: (making) => queueMicrotask(() => work(worker, structuredClone(making))),
    terminate: () => {
      ended += 1;
    },
  };
  return { make: () => worker, ended: () => ended };
}

function kitchenTable(): SetMaking {
  const project = createProject('p1', 'Test');
  const colours = ['#8a3b2e', '#27466b', '#d9a441', '#4f6b52'];
  colours.forEach((colour, index) => {
    const id = `c${index}`;
    project.fabrics.push({ id, name: id, colour, cloth: { kind: 'plain' }, background: false });
    for (const width of [1.5, 2]) {
      project.stripsOnHand.push({ id: `h${id}${width}`, fabric: id, width, length: 40, count: 3 });
    }
  });
  return setMakingOf(project, { sets: 2 }, 5);
}

describe('making sets beside the page', () => {
  it('gives what makeSets gives, and the worker is let go', async () => {
    const making = kitchenTable();
    const { make, ended } = workerThat((worker, asked) =>
      worker.onmessage?.({ data: { made: makeSets(asked) } } as MessageEvent),
    );
    const answer = await startMaking(making, make).answer;
    expect(answer).toEqual({ ok: true, value: makeSets(making) });
    expect(answer?.ok && answer.value.sets).toHaveLength(2);
    expect(ended()).toBe(1);
  });

  it('says why when the worker breaks', async () => {
    const failing = workerThat((worker) =>
      worker.onmessage?.({ data: { reason: 'no memory' } } as MessageEvent),
    );
    const answer = await startMaking(kitchenTable(), failing.make).answer;
    expect(answer && !answer.ok && speak(answer.problems[0]!.message)).toBe(
      'The sets could not be made: no memory. Nothing has changed.',
    );
    const absent = workerThat((worker) => worker.onerror?.({ message: '' } as ErrorEvent));
    const other = await startMaking(kitchenTable(), absent.make).answer;
    expect(other?.ok).toBe(false);
  });

  it('answers nothing once it is stopped', async () => {
    const { make, ended } = workerThat(() => {});
    const running = startMaking(kitchenTable(), make);
    running.cancel();
    expect(await running.answer).toBeNull();
    expect(ended()).toBe(1);
  });
});
