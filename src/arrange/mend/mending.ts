// Whether a change mends a finding: quickly for clashes, which are looked up where they were; by a fresh analysis for what is
// seen over the whole top.
import type { Analysis } from '../../balance/analyse';
import { type Clash, clashesBetween, clashesInside } from '../../balance/clashes/clashes';
import { clashFindings } from '../../balance/clashes/clashFindings';
import { clashSums } from '../../balance/clashes/clashSums';
import { type Finding, isClashKind } from '../../balance/finding';
import { type WallModel, wallModel } from '../../balance/wall/wallModel';
import type { Project } from '../../model/project';

/** So many of the clashes told together get proposals of their own. */
const TOLD_TOGETHER = 3;

/** A finding that has lost this part of its weight counts as mended, even if something of it is left to see. */
const EASED = 1 / 3;

/** The clashes a finding stands for, heaviest first; none for findings of other kinds. */
export function clashesBehind(finding: Finding, analysis: Analysis): readonly Clash[] {
  const behind = new Set(finding.clashes.slice(0, TOLD_TOGETHER));
  return analysis.clashes
    .filter((clash) => behind.has(clash.id))
    .toSorted((one, other) => other.weight - one.weight);
}

/** Whether a clash is gone from the project as changed, and no other has come in its stead: there is less clash in all. */
export function clashGone(clash: Clash, analysis: Analysis, changed: Project): boolean {
  const model = wallModel(changed, analysis.model.cloths, analysis);
  const inside = clash.blocks.flatMap((id) => clashesInside(changed, model, model.blocks.indexOf(id)));
  if (inside.some((one) => one.id === clash.id)) return false;
  if (clashesBetween(changed, model).some((one) => one.id === clash.id)) return false;
  return inchesOf(model) < inchesOf(analysis.model) - 1e-9;
}

function inchesOf(model: WallModel): number {
  const sums = clashSums(model);
  return sums.same + sums.alike;
}

/** Whether a finding about the whole top is gone or has become much lighter. */
export function eased(finding: Finding, after: Analysis): boolean {
  return after.findings
    .filter((one) => sameMatter(finding, one))
    .every((one) => one.weight <= finding.weight * (1 - EASED));
}

/** Whether two findings, before and after a change, speak of the same: a pool keeps its name no longer than its blocks. */
function sameMatter(finding: Finding, other: Finding): boolean {
  if (other.id === finding.id) return true;
  const blocks = new Set(finding.blocks);
  const shared = other.blocks.filter((block) => blocks.has(block)).length;
  return (
    other.kind === finding.kind && shared > 0 && shared >= Math.min(blocks.size, other.blocks.length) / 2
  );
}

/** What one analysis finds and the other does not. Clashes are compared one by one, told together or not. */
export function newFindings(before: Analysis, after: Analysis): Finding[] {
  const known = new Set(before.clashes.map((clash) => clash.id));
  const clashes = after.clashes
    .filter((clash) => !known.has(clash.id))
    .flatMap((clash) => clashFindings(after.project, [clash]));
  const others = after.findings.filter(
    (one) => !isClashKind(one.kind) && !before.findings.some((other) => sameMatter(one, other)),
  );
  return [...clashes, ...others].sort((one, other) => other.weight - one.weight);
}
