// Answers questions about the balance, in the worker or in the page. It keeps the last analyses, so that a turn is analysed from
// the state before it, and mends are found on tables that are there already.
import { type Effect, effectOf, type Proposal, propose } from '../../arrange/mend/proposals';
import { type WedgeOffers, wedgeOffers } from '../../arrange/mend/wedgeOffers';
import type { Analysis } from '../../balance/analyse';
import { clashFinding } from '../../balance/clashes/clashFindings';
import type { Finding } from '../../balance/finding';
import type { Terms } from '../../balance/score/weights';
import { weightsOf } from '../../balance/score/wishes';
import { type Standing, standingAfter } from '../../balance/standing';
import { findBlock } from '../../model/find';
import { moved } from '../../model/moves';
import type { Fabric, Project } from '../../model/project';
import type { Answers } from '../workers/protocol';
import { figuresOf } from './analysis';
import { type AnalysisJobs, type BalanceNews, seamsData } from './analysisJobs';
import { analysisAfter } from './atOnce';

/** How many analyses it keeps: of the quilt, of a preview, and those just before. */
const KEPT = 6;

interface KeptAnalysis {
  readonly analysis: Analysis;
  /** Proposals by the id of the finding or clash they mend. */
  readonly proposals: Map<string, readonly Proposal[]>;
}

type Asked<K extends keyof AnalysisJobs> = AnalysisJobs[K]['ask'];

export class Analyst implements Answers<AnalysisJobs> {
  private project: Project | null = null;
  private latest: Analysis | null = null;
  private readonly kept = new Map<number, KeptAnalysis>();

  analyse({ analysis: number, parts }: Asked<'analyse'>): BalanceNews {
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
    const same =
      before?.model.typeBands === analysis.model.typeBands && before.model.cloths === analysis.model.cloths;
    return { ...figuresOf(analysis), seams: same ? null : seamsData(analysis.model) };
  }

  propose({ about, finding: id }: Asked<'propose'>): readonly Proposal[] | null {
    const kept = this.kept.get(about);
    if (!kept) return null;
    const { analysis, proposals } = kept;
    const finding = findingOf(analysis, id);
    const found =
      proposals.get(id) ?? (finding ? propose(finding, analysis, { weights: weights(analysis) }) : []);
    proposals.set(id, found);
    return found;
  }

  effect({ about, moves }: Asked<'effect'>): Effect | null {
    const analysis = this.kept.get(about)?.analysis;
    return analysis ? effectOf(analysis, moves, weights(analysis)) : null;
  }

  standing({ about, moves }: Asked<'standing'>): Standing | null {
    const analysis = this.kept.get(about)?.analysis;
    return analysis ? standingAfter(analysis, moved(analysis.project, moves)) : null;
  }

  offers({ about, block: id, place }: Asked<'offers'>): WedgeOffers | null {
    const analysis = this.kept.get(about)?.analysis;
    const block = analysis && findBlock(analysis.project, id);
    return block ? wedgeOffers(analysis, block, place) : null;
  }

  /** The project with these parts. An unchanged fabric stays the same object, because the measure of its print is cached. */
  private after(parts: Partial<Project>): Project {
    const before = this.project;
    if (!before) return parts as Project;
    const { fabrics } = parts;
    return { ...before, ...parts, ...(fabrics ? { fabrics: stillThere(before.fabrics, fabrics) } : {}) };
  }
}

function weights({ project }: Analysis): Terms {
  return weightsOf(project.preferences);
}

/** The finding with this id, or a finding made of the single clash with this id; null when there is neither. */
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
