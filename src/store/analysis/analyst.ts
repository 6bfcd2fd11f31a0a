// Who answers for the balance, beside the page or in it: keeps the last analyses, so that a turn is worked out from the one
// before it and mends are found on the tables that are there.
import { effectOf, type Proposal, propose } from '../../arrange/mend/proposals';
import { wedgeOffers } from '../../arrange/mend/wedgeOffers';
import type { Analysis } from '../../balance/analyse';
import { clashFinding } from '../../balance/clashes/clashFindings';
import type { Finding } from '../../balance/finding';
import { weightsOf } from '../../balance/score/wishes';
import { findBlock } from '../../model/find';
import type { Fabric, Project } from '../../model/project';
import { analysisAfter, balanceOf, figuresOf } from './analysis';
import type { BalanceNews, FromAnalyst, ToAnalyst } from './analysisMessages';

/** Analyses kept: of the quilt and of what is tried on it, and those just before. */
const KEPT = 6;

export class Analyst {
  private project: Project | null = null;
  private latest: Analysis | null = null;
  private readonly kept = new Map<
    number,
    { analysis: Analysis; proposals: Map<string, readonly Proposal[]> }
  >();

  /** The answer to a message. Never throws. */
  answer(message: ToAnalyst): FromAnalyst {
    const { number } = message;
    try {
      if (message.kind === 'analyse')
        return { kind: 'balance', number, news: this.analyse(number, message.parts) };
      const kept = this.kept.get(message.about);
      if (!kept) return { kind: 'gone', number };
      const { analysis } = kept;
      const weights = weightsOf(analysis.project.preferences);
      if (message.kind === 'effect')
        return { kind: 'effect', number, effect: effectOf(analysis, message.moves, weights) };
      if (message.kind === 'offers') {
        const block = findBlock(analysis.project, message.block);
        return block
          ? { kind: 'offers', number, offers: wedgeOffers(analysis, block, message.place) }
          : { kind: 'gone', number };
      }
      const finding = findingOf(analysis, message.finding);
      const proposals =
        kept.proposals.get(message.finding) ?? (finding ? propose(finding, analysis, { weights }) : []);
      kept.proposals.set(message.finding, proposals);
      return { kind: 'proposals', number, proposals };
    } catch (error) {
      return { kind: 'failed', number, reason: error instanceof Error ? error.message : String(error) };
    }
  }

  private analyse(number: number, parts: Partial<Project>): BalanceNews {
    const project = this.after(parts);
    this.project = project;
    const before = this.latest;
    const analysis = analysisAfter(before, project);
    this.latest = analysis;
    this.kept.set(number, { analysis, proposals: new Map() });
    for (const old of this.kept.keys()) {
      if (this.kept.size <= KEPT) break;
      this.kept.delete(old);
    }
    const { seams } = balanceOf(analysis);
    const figures = figuresOf(analysis);
    const same =
      before?.model.typeBands === analysis.model.typeBands && before.model.cloths === analysis.model.cloths;
    if (same) return { ...figures, seams: null };
    const { radialMemo: _, cloths, ...rest } = seams;
    const { clothOf: __, ...sent } = cloths;
    return { ...figures, seams: { ...rest, cloths: sent } };
  }

  /** The project with these parts; a fabric that came again unchanged stays the one whose print is measured already. */
  private after(parts: Partial<Project>): Project {
    const before = this.project;
    if (!before) return parts as Project;
    const { fabrics } = parts;
    return { ...before, ...parts, ...(fabrics ? { fabrics: stillThere(before.fabrics, fabrics) } : {}) };
  }
}

/** A finding by its id, or the finding a single clash is by itself; null when it is neither. */
function findingOf(analysis: Analysis, id: string): Finding | null {
  const told = analysis.findings.find((one) => one.id === id);
  if (told) return told;
  const clash = analysis.clashes.find((one) => one.id === id);
  return clash ? clashFinding(analysis.project, clash) : null;
}

function stillThere(before: readonly Fabric[], now: readonly Fabric[]): Fabric[] {
  const known = new Map(before.map((fabric) => [JSON.stringify(fabric), fabric]));
  return now.map((fabric) => known.get(JSON.stringify(fabric)) ?? fabric);
}
