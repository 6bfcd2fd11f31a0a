import { describe, expect, it } from 'vitest';
import { propose } from '../../../src/arrange/mend/proposals';
import { analyse } from '../../../src/balance/analyse';
import { weightsOf, wishesOf } from '../../../src/balance/score/wishes';
import { turnedColourway } from '../../../src/cloth/colourway';
import { apply } from '../../../src/editing/apply';
import { turnBlock } from '../../../src/editing/commands/wall';
import { inColourway } from '../../../src/model/colourway';
import type { Project } from '../../../src/model/project';
import { balanceAtOnce, knownBalance } from '../../../src/store/analysis/analysis';
import { AnalysisClient, type AnalysisWorker } from '../../../src/store/analysis/analysisClient';
import type { FromAnalyst, ToAnalyst } from '../../../src/store/analysis/analysisMessages';
import { Analyst } from '../../../src/store/analysis/analyst';
import { scrappyTop } from '../../balance/tops';

/** A worker that answers when the test says so, from data that went through a clone both ways. */
class SlowWorker implements AnalysisWorker {
  onmessage: ((event: MessageEvent<FromAnalyst>) => void) | null = null;
  onerror: ((event: ErrorEvent) => void) | null = null;
  readonly heard: ToAnalyst[] = [];
  private readonly analyst = new Analyst();
  private answered = 0;

  postMessage(message: ToAnalyst): void {
    this.heard.push(structuredClone(message));
  }

  terminate(): void {
    this.onmessage = null;
  }

  /** Answers everything it is asked, one after the other. */
  catchUp(): void {
    while (this.answered < this.heard.length) {
      const answer = this.analyst.answer(this.heard[this.answered]!);
      this.answered += 1;
      this.onmessage?.({ data: structuredClone(answer) } as MessageEvent<FromAnalyst>);
    }
  }
}

function desk() {
  const worker = new SlowWorker();
  return { worker, client: new AnalysisClient(() => worker) };
}

function turned(project: Project, block: number): Project {
  const outcome = apply(project, turnBlock(project, project.blocks[block]!.id, 1));
  if (!outcome.ok) throw new Error('not turned');
  return outcome.project;
}

const top = (seed: number) => scrappyTop({ rows: 4, columns: 4, seed });

describe('the balance worked out beside the page', () => {
  it('is what it is at once, after turns and other cloth too, though only what changed is sent', () => {
    const { worker, client } = desk();
    const start = top(1);
    const once = turned(start, 3);
    const twice = turned(once, 5);
    const [first, ...rest] = start.fabrics;
    const states = [start, once, twice, { ...twice, fabrics: [{ ...first!, colour: '#102030' }, ...rest] }];
    for (const state of states) {
      client.want(state);
      worker.catchUp();
      const told = knownBalance(state)!;
      const fresh = analyse(state, wishesOf(state.preferences));
      expect(told.project).toBe(state);
      expect(told.clashes).toEqual(fresh.clashes);
      expect(told.findings).toEqual(fresh.findings);
      expect(told.seams.typeBands).toEqual(fresh.model.typeBands);
      expect(told.seams.cloths.likeness).toEqual(fresh.model.cloths.likeness);
    }
    const sent = worker.heard.map((one) => (one.kind === 'analyse' ? Object.keys(one.parts) : []));
    expect(sent.slice(1)).toEqual([['wall'], ['wall'], ['fabrics']]);
  });

  it('asks for one at a time, the newest first, and never for what is no longer wanted', () => {
    const { worker, client } = desk();
    const start = top(2);
    client.want(start);
    const stale = turned(start, 0);
    const forget = client.want(stale);
    const last = turned(stale, 1);
    forget();
    client.want(last);
    expect(worker.heard).toHaveLength(1);
    let told = 0;
    client.subscribe(() => {
      told += 1;
    });
    worker.catchUp();
    expect(worker.heard).toHaveLength(2);
    expect([start, stale, last].map((one) => knownBalance(one) !== null)).toEqual([true, false, true]);
    expect(told).toBe(2);
  });

  it('answers what a mend does on the very analysis, and works it out again where it made room for later ones', async () => {
    const { worker, client } = desk();
    const project = top(3);
    client.want(project);
    worker.catchUp();
    const [finding] = knownBalance(project)!.findings;
    const analysis = analyse(project, wishesOf(project.preferences));
    const expected = propose(analysis.findings[0]!, analysis, { weights: weightsOf(project.preferences) });
    const first = client.proposals(project, finding!.id);
    worker.catchUp();
    expect(await first).toEqual(expected);
    let later = project;
    for (let turn = 0; turn < 8; turn++) {
      later = turned(later, turn);
      client.want(later);
      worker.catchUp();
    }
    const again = client.proposals(project, finding!.id);
    worker.catchUp();
    expect(await again).toEqual(expected);
    const effect = client.effect(project, expected[0]?.moves ?? []);
    worker.catchUp();
    expect((await effect)?.after.total).toBeCloseTo(expected[0]!.effect.after.total, 9);
  });

  it('of a quilt and its colourways asked for together is each its own, also after the quilt was turned', () => {
    const { worker, client } = desk();
    const start = top(7);
    for (const project of [start, turned(start, 2)]) {
      const worn = [90, 200].map((degrees) => {
        const { swaps, cloth } = turnedColourway(project, 'Other', degrees, 'turnedOver');
        return inColourway(project, { id: 'c', name: 'Other', swaps, cloth });
      });
      const wanted = [project, ...worn];
      for (const one of wanted) client.want(one);
      worker.catchUp();
      for (const one of wanted) {
        const fresh = analyse(one, wishesOf(one.preferences));
        expect(knownBalance(one)!.findings).toEqual(fresh.findings);
        expect(knownBalance(one)!.value).toEqual(fresh.value);
      }
    }
  });

  it('ranks the wedges for a place', async () => {
    const { worker, client } = desk();
    const project = top(4);
    client.want(project);
    const offers = client.offers(project, project.blocks[0]!.id, 2);
    worker.catchUp();
    expect((await offers)!.inTrade.length).toBeGreaterThan(0);
  });

  it('goes on in the page when the worker breaks or none can be started', async () => {
    const { worker, client } = desk();
    const project = top(5);
    client.want(project);
    worker.onerror?.({ message: 'out of memory' } as ErrorEvent);
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

  it('says why a balance could not be worked out, and is not asked for it again', () => {
    const { worker, client } = desk();
    const project = top(7);
    const broken = { ...project, wall: null } as unknown as Project;
    client.want(broken);
    worker.catchUp();
    expect(client.reason(broken)).toMatch(/./);
    client.want(project);
    worker.catchUp();
    expect(client.reason(project)).toBeNull();
    expect(knownBalance(project)).not.toBeNull();
    expect(worker.heard).toHaveLength(2);
  });
});
