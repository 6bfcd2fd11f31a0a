import { describe, expect, it } from 'vitest';
import { propose } from '../../../src/arrange/mend/proposals';
import { analyse } from '../../../src/balance/analyse';
import { weightsOf, wishesOf } from '../../../src/balance/score/wishes';
import { turnedColourway } from '../../../src/cloth/colourway';
import { apply } from '../../../src/editing/apply';
import { turnBlock } from '../../../src/editing/commands/wall';
import { inColourway } from '../../../src/model/colourway';
import { speak } from '../../../src/model/phrase';
import type { Project } from '../../../src/model/project';
import { knownBalance } from '../../../src/store/analysis/analysis';
import { AnalysisClient } from '../../../src/store/analysis/analysisClient';
import type { AnalysisJobs } from '../../../src/store/analysis/analysisJobs';
import { Analyst } from '../../../src/store/analysis/analyst';
import { balanceAtOnce } from '../../../src/store/analysis/atOnce';
import { answering } from '../../../src/store/workers/protocol';
import { scrappyTop } from '../../balance/tops';
import { StubWorker, settled } from '../workers/stubWorker';

/** A worker that answers when the test says so. */
class SlowWorker extends StubWorker<AnalysisJobs> {
  private readonly work = answering<AnalysisJobs>(new Analyst(), (message) => this.say(message));
  private answered = 0;

  /** Answers everything it is asked, one after the other. */
  async catchUp(): Promise<void> {
    while (this.answered < this.heard.length) {
      this.work(this.heard[this.answered]!);
      this.answered += 1;
      await settled();
    }
  }
}

function desk() {
  const workers: SlowWorker[] = [];
  const client = new AnalysisClient(() => {
    const worker = new SlowWorker();
    workers.push(worker);
    return worker;
  });
  const last = () => workers.at(-1)!;
  const asks = () => last().heard.flatMap((one) => (one.kind === 'ask' ? [one.ask] : []));
  return {
    client,
    workers,
    asks,
    break: () => last().break('out of memory'),
    catchUp: () => last().catchUp(),
  };
}

function turned(project: Project, block: number): Project {
  const outcome = apply(project, turnBlock(project, project.blocks[block]!.id, 1));
  if (!outcome.ok) throw new Error('not turned');
  return outcome.project;
}

const top = (seed: number) => scrappyTop({ rows: 4, columns: 4, seed });

describe('the balance worked out beside the page', () => {
  it('is what it is at once, after turns and other cloth too, though only what changed is sent', async () => {
    const { client, asks, catchUp } = desk();
    const start = top(1);
    const once = turned(start, 3);
    const twice = turned(once, 5);
    const [first, ...rest] = start.fabrics;
    const states = [start, once, twice, { ...twice, fabrics: [{ ...first!, colour: '#102030' }, ...rest] }];
    for (const state of states) {
      client.want(state);
      await catchUp();
      const told = knownBalance(state)!;
      const fresh = analyse(state, wishesOf(state.preferences));
      expect(told.project).toBe(state);
      expect(told.clashes).toEqual(fresh.clashes);
      expect(told.findings).toEqual(fresh.findings);
      expect(told.seams.typeBands).toEqual(fresh.model.typeBands);
      expect(told.seams.cloths.index).toEqual(fresh.model.cloths.index);
      expect(told.seams.cloths.likeness).toEqual(fresh.model.cloths.likeness);
    }
    const sent = asks().map((ask) => ('parts' in ask ? Object.keys(ask.parts) : []));
    expect(sent.slice(1)).toEqual([['wall'], ['wall'], ['fabrics']]);
  });

  it('asks for one at a time, the newest first, and never for what is no longer wanted', async () => {
    const { client, asks, catchUp } = desk();
    const start = top(2);
    client.want(start);
    const stale = turned(start, 0);
    const forget = client.want(stale);
    const last = turned(stale, 1);
    forget();
    client.want(last);
    expect(asks()).toHaveLength(1);
    let told = 0;
    client.subscribe(() => {
      told += 1;
    });
    await catchUp();
    expect(asks()).toHaveLength(2);
    expect([start, stale, last].map((one) => knownBalance(one) !== null)).toEqual([true, false, true]);
    expect(told).toBe(2);
  });

  it('answers what a mend does on the very analysis, and works it out again where it made room for later ones', async () => {
    const { client, catchUp } = desk();
    const project = top(3);
    client.want(project);
    await catchUp();
    const [finding] = knownBalance(project)!.findings;
    const analysis = analyse(project, wishesOf(project.preferences));
    const expected = propose(analysis.findings[0]!, analysis, { weights: weightsOf(project.preferences) });
    const first = client.proposals(project, finding!.id);
    await catchUp();
    expect(await first).toEqual(expected);
    let later = project;
    for (let turn = 0; turn < 8; turn++) {
      later = turned(later, turn);
      client.want(later);
      await catchUp();
    }
    const again = client.proposals(project, finding!.id);
    await catchUp();
    expect(await again).toEqual(expected);
    const effect = client.effect(project, expected[0]?.moves ?? []);
    await catchUp();
    expect((await effect)?.after.total).toBeCloseTo(expected[0]!.effect.after.total, 9);
  });

  it('of a quilt and its colourways asked for together is each its own, also after the quilt was turned', async () => {
    const { client, catchUp } = desk();
    const start = top(7);
    for (const project of [start, turned(start, 2)]) {
      const worn = [90, 200].map((degrees) => {
        const { swaps, cloth } = turnedColourway(project, 'Other', degrees, 'turnedOver');
        return inColourway(project, { id: 'c', name: 'Other', swaps, cloth });
      });
      const wanted = [project, ...worn];
      for (const one of wanted) client.want(one);
      await catchUp();
      for (const one of wanted) {
        const fresh = analyse(one, wishesOf(one.preferences));
        expect(knownBalance(one)!.findings).toEqual(fresh.findings);
        expect(knownBalance(one)!.value).toEqual(fresh.value);
      }
    }
  });

  it('ranks the wedges for a place', async () => {
    const { client, catchUp } = desk();
    const project = top(4);
    client.want(project);
    const offers = client.offers(project, project.blocks[0]!.id, 2);
    await catchUp();
    expect((await offers)!.inTrade.length).toBeGreaterThan(0);
  });

  it('goes on in the page when the worker breaks or none can be started', async () => {
    const { client, workers, break: breakIt } = desk();
    const project = top(5);
    client.want(project);
    breakIt();
    expect(workers).toHaveLength(2);
    breakIt();
    await new Promise<void>((done) => client.subscribe(done));
    expect(knownBalance(project)!.findings).toEqual(balanceAtOnce({ ...project }).findings);
    const alone = new AnalysisClient(() => {
      throw new Error('workers are not allowed here');
    });
    const other = top(6);
    alone.want(other);
    const [finding] = analyse(other, wishesOf(other.preferences)).findings;
    expect(await alone.proposals(other, finding!.id)).not.toBeNull();
    expect(knownBalance(other)).not.toBeNull();
  });

  it('goes on with another worker when one breaks, which is sent the whole quilt', async () => {
    const { client, asks, break: breakIt, catchUp } = desk();
    const project = top(8);
    client.want(project);
    await catchUp();
    const later = turned(project, 3);
    client.want(later);
    breakIt();
    await catchUp();
    expect(Object.keys((asks()[0] as { parts: object }).parts)).toEqual(Object.keys(later));
    expect(knownBalance(later)!.findings).toEqual(analyse(later, wishesOf(later.preferences)).findings);
    const [finding] = knownBalance(project)!.findings;
    const proposals = client.proposals(project, finding!.id);
    breakIt();
    await catchUp();
    expect((await proposals)!.length).toBeGreaterThan(0);
  });

  it('says why a balance could not be worked out, and is not asked for it again', async () => {
    const { client, asks, catchUp } = desk();
    const project = top(7);
    const broken = { ...project, wall: null } as unknown as Project;
    client.want(broken);
    await catchUp();
    expect(speak(client.reason(broken)!)).toMatch(/./);
    client.want(project);
    await catchUp();
    expect(client.reason(project)).toBeNull();
    expect(knownBalance(project)).not.toBeNull();
    expect(asks()).toHaveLength(2);
  });
});
