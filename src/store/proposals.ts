// Ways to mend a finding, worked out when asked for and kept for each analysis; and which of them can be taken together.
import { type Effect, effectOf, type Proposal, propose } from '../arrange/proposals';
import type { Analysis } from '../balance/analyse';
import type { Finding } from '../balance/finding';
import { weightsOf } from '../balance/wishes';
import { blocksWith, cellIndexOf } from '../model/find';
import type { Move } from '../model/moves';
import type { BlockId, Project } from '../model/project';

const known = new WeakMap<Analysis, Map<string, readonly Proposal[]>>();

/** The few smallest changes that mend a finding; empty when nothing that is free to move does. */
export function proposalsFor(analysis: Analysis, finding: Finding): readonly Proposal[] {
  const kept = known.get(analysis) ?? new Map<string, readonly Proposal[]>();
  known.set(analysis, kept);
  const found =
    kept.get(finding.id) ?? propose(finding, analysis, { weights: weightsOf(analysis.project.preferences) });
  kept.set(finding.id, found);
  return found;
}

/** What several proposals would do together. */
export function effectTogether(analysis: Analysis, proposals: readonly Proposal[]): Effect {
  return effectOf(
    analysis,
    proposals.flatMap((proposal) => proposal.moves),
    weightsOf(analysis.project.preferences),
  );
}

/** Whether two proposals touch no block and no cell in common, so that both can be done. */
export function canGoTogether(project: Project, one: Proposal, other: Proposal): boolean {
  const touched = new Set(one.moves.flatMap((move) => touches(project, move)));
  return !other.moves.flatMap((move) => touches(project, move)).some((part) => touched.has(part));
}

function touches(project: Project, move: Move): string[] {
  const cells = (indices: readonly number[]) =>
    indices
      .flatMap((index) => [`cell ${index}`, project.wall.cells[index]?.block ?? ''])
      .filter((part) => part !== '');
  const hung = (block: BlockId) => {
    const at = cellIndexOf(project, block);
    return at < 0 ? [block] : cells([at]);
  };
  switch (move.kind) {
    case 'swap':
      return cells([move.cell, move.other]);
    case 'hang':
      return [move.block, ...cells([move.cell])];
    case 'turn':
    case 'shift':
    case 'take':
    case 'place':
      return hung(move.block);
    case 'strips':
      return blocksWith(project, move.set).flatMap(hung);
    default:
      return move satisfies never;
  }
}
