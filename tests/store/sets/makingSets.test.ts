// Making sets beside the page: the worker's answer arrives once, a broken one becomes a reason, a stopped one nothing.
import { describe, expect, it } from 'vitest';
import { makeSets, type SetMaking, setMakingOf } from '../../../src/cutting/sets/randomSets';
import { createProject } from '../../../src/model/create';
import { speak } from '../../../src/model/phrase';
import { startMaking } from '../../../src/store/sets/makingSets';
import type { SetsJobs } from '../../../src/store/sets/setsJobs';
import { stubs, WorkingStub } from '../workers/stubWorker';

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
    const worker = new WorkingStub<SetsJobs>({ make: makeSets });
    const answer = await startMaking(making, () => worker).answer;
    expect(answer).toEqual({ ok: true, value: makeSets(making) });
    expect(answer?.ok && answer.value.sets).toHaveLength(2);
    expect(worker.ended).toBe(true);
  });

  it('says why when it fails', async () => {
    const { workers, start } = stubs<SetsJobs>();
    const running = startMaking(kitchenTable(), start);
    workers[0]!.fail('make', 'no memory');
    const answer = await running.answer;
    expect(answer && !answer.ok && speak(answer.problems[0]!.message)).toBe(
      'The sets could not be made: no memory. Nothing has changed.',
    );
    expect(workers[0]!.ended).toBe(true);
  });

  it('answers nothing once it is stopped', async () => {
    const { workers, start } = stubs<SetsJobs>();
    const running = startMaking(kitchenTable(), start);
    running.cancel();
    expect(await running.answer).toBeNull();
    expect(workers[0]!.ended).toBe(true);
  });
});
