// For a finding, the few smallest changes that mend it, each with its full effect on everything else. What a change costs is
// known from the living wall before it is looked at closer; what is pinned or sewn is never proposed.
import { type Analysis, reanalyse } from '../../balance/analyse';
import type { Clash } from '../../balance/clashes/clashes';
import type { Finding, FindingKind } from '../../balance/finding';
import {
  DEFAULT_WEIGHTS,
  TERM_NAMES,
  type TermName,
  type Terms,
  weighted,
} from '../../balance/score/weights';
import { type Move, moved } from '../../model/moves';
import { type Phrase, phrase } from '../../model/phrase';
import type { Project } from '../../model/project';
import { type Decisions, decisionsOf } from '../decisions';
import { costTables } from '../live/costTables';
import { LiveWall } from '../live/liveWall';
import { movesBetween } from '../movesBetween';
import { ALL_SCOPES, type Score } from '../score';
import { type Change, changeWords, costOf, make, touched } from './changes';
import { clashesBehind, clashGone, eased, newFindings } from './mending';

/** What a change would do to everything. */
export interface Effect {
  readonly before: Score;
  readonly after: Score;
  /** After less before, term by term: below 0 is better. */
  readonly change: Terms;
  /** What would be gone, heaviest first; clashes that are told together are named one by one. */
  readonly mended: readonly Finding[];
  /** What there would be instead. */
  readonly added: readonly Finding[];
}

export interface Proposal {
  readonly moves: readonly Move[];
  readonly words: Phrase;
  readonly effect: Effect;
}

export interface ProposalWishes {
  readonly weights?: Terms;
  /** At most so many proposals; 3 unless given. */
  readonly most?: number;
}

/** Candidates looked at closely: cheap ones for clashes, dear ones for what needs a fresh analysis. */
const CLOSELY = { clash: 40, whole: 8 } as const;
/** First changes that are followed up by a second, when no single change mends. */
const FOLLOWED = 12;
/** So many times more that mend a clash are found than are proposed, so that they can differ. */
const VARIETY = 4;
/** How much more a finding's own term counts when candidates for it are looked for. */
const EMPHASIS = 8;

/** Terms a kind of finding is about. */
const ABOUT: Readonly<Record<FindingKind, readonly TermName[]>> = {
  rim: ['clashLength', 'lookAlikes'],
  radial: ['clashLength', 'lookAlikes'],
  facing: ['clashLength', 'lookAlikes'],
  setting: ['clashLength', 'lookAlikes'],
  'value-pool': ['valueSpread'],
  'colour-pool': ['colourSpread'],
  'fabric-spread': ['fabricSpread'],
  'whole-top': ['wholeTopWeight'],
};

interface Candidate {
  readonly changes: readonly Change[];
  readonly added: number;
}

/**
 * Proposals for a finding of the analysis: single changes that mend it, or pairs where no single one does; fewest changes
 * first, then the best total. Empty when nothing that may be moved mends it.
 */
export function propose(finding: Finding, analysis: Analysis, wishes: ProposalWishes = {}): Proposal[] {
  const search = new MendSearch(analysis, wishes.weights ?? DEFAULT_WEIGHTS);
  const most = wishes.most ?? 3;
  const clashes = clashesBehind(finding, analysis);
  const found =
    clashes.length > 1
      ? clashes.flatMap((clash) => search.forClash(clash, 1))
      : clashes.length === 1
        ? search.forClash(clashes[0]!, VARIETY * most)
        : search.forWhole(finding, most);
  return search.varied(found, most).map((candidate) => search.proposal(candidate));
}

/** What some moves would do to everything; for previews of the arranger's answers and of several proposals together. */
export function effectOf(
  analysis: Analysis,
  moves: readonly Move[],
  weights: Terms = DEFAULT_WEIGHTS,
): Effect {
  const after = reanalyse(analysis, moved(analysis.project, moves));
  const { terms } = after;
  return {
    before: { terms: analysis.terms, total: weighted(analysis.terms, weights) },
    after: { terms, total: weighted(terms, weights) },
    change: Object.fromEntries(TERM_NAMES.map((name) => [name, terms[name] - analysis.terms[name]])) as Terms,
    mended: newFindings(after, analysis),
    added: newFindings(analysis, after),
  };
}

/** One sitting over one analysis. */
class MendSearch {
  private readonly analysis: Analysis;
  private readonly project: Project;
  private readonly weights: Terms;
  private readonly decisions: Decisions;
  private readonly wall: LiveWall;

  constructor(analysis: Analysis, weights: Terms) {
    this.analysis = analysis;
    this.project = analysis.project;
    this.weights = weights;
    this.decisions = decisionsOf(analysis.project, analysis.model, ALL_SCOPES);
    this.wall = this.newWall(weights);
  }

  forClash(clash: Clash, most: number): Candidate[] {
    const blocks = clash.blocks.map((id) => this.analysis.model.blocks.indexOf(id));
    const places = clash.places.map((place, at) => {
      const block = blocks[at] ?? blocks[0]!;
      return block * this.analysis.model.perBlock + place - 1;
    });
    const mends = (candidate: Candidate) =>
      clashGone(clash, this.analysis, moved(this.project, this.moves(candidate.changes)));
    return this.smallest(this.wall, { blocks, places }, mends, most, CLOSELY.clash);
  }

  forWhole(finding: Finding, most: number): Candidate[] {
    const { model } = this.analysis;
    const named = finding.blocks.map((id) => model.blocks.indexOf(id));
    const blocks = named.length > 0 ? named : Array.from(model.blockIn).filter((block) => block >= 0);
    const emphasised = { ...this.weights };
    for (const name of ABOUT[finding.kind]) emphasised[name] = Math.max(1, emphasised[name]) * EMPHASIS;
    const mends = (candidate: Candidate) =>
      eased(finding, reanalyse(this.analysis, moved(this.project, this.moves(candidate.changes))));
    return this.smallest(this.newWall(emphasised), { blocks, places: [] }, mends, most, CLOSELY.whole);
  }

  /** The best of each way to go about it (turn this block, move that one, trade this wedge), then the next best. */
  varied(candidates: readonly Candidate[], most: number): Candidate[] {
    const first = new Map<string, Candidate>();
    for (const candidate of candidates) {
      const way = candidate.changes.map(wayOf).join();
      if (!first.has(way)) first.set(way, candidate);
    }
    const ways = Array.from(first.values());
    const rest = candidates.filter(
      (one) => !ways.includes(one) && !ways.some((way) => sameChanges(way, one)),
    );
    const chosen = [...ways, ...rest].slice(0, most);
    return chosen.toSorted(
      (one, other) => one.changes.length - other.changes.length || one.added - other.added,
    );
  }

  proposal(candidate: Candidate): Proposal {
    const undo: Change[] = [];
    const words = candidate.changes.map((change) => {
      const said = changeWords(this.project, this.wall, change);
      undo.unshift(make(this.wall, change));
      return said;
    });
    const moves = movesBetween(this.project, this.wall);
    for (const change of undo) make(this.wall, change);
    return {
      moves,
      words: words.reduce((first, next) => phrase('{first}. {next}', { first, next })),
      effect: effectOf(this.analysis, moves, this.weights),
    };
  }

  private newWall(weights: Terms): LiveWall {
    const { model, scales } = this.analysis;
    return new LiveWall(costTables(model, scales, weights), this.decisions.spare);
  }

  /** Singles that mend; else pairs. Each tier by the total it would leave, those that spoil more than they mend last. */
  private smallest(
    wall: LiveWall,
    about: About,
    mends: (candidate: Candidate) => boolean,
    most: number,
    closely: number,
  ): Candidate[] {
    const singles = byCost(this.singles(wall, about));
    const found = firstThat(mends, singles.slice(0, closely), most);
    if (found.length > 0) return this.ranked(found);
    return this.ranked(firstThat(mends, byCost(this.pairs(wall, about, singles)).slice(0, closely), most));
  }

  /** By the total with the person's own weights. */
  private ranked(candidates: readonly Candidate[]): Candidate[] {
    return byCost(
      candidates.map(({ changes }) => ({
        changes,
        added: this.withAll(this.wall, changes, () => this.wall.cost),
      })),
    );
  }

  private singles(wall: LiveWall, about: About): Candidate[] {
    return this.changesFor(about).map((change) => ({ changes: [change], added: costOf(wall, change) }));
  }

  /** The most promising first changes, each with the best of what may follow on what it touched. */
  private pairs(wall: LiveWall, about: About, singles: readonly Candidate[]): Candidate[] {
    return singles.slice(0, FOLLOWED).flatMap((single) => {
      const [first] = single.changes;
      const blocks = [...new Set([...about.blocks, ...touched(wall, first!)])];
      return this.withAll(wall, single.changes, () =>
        byCost(
          this.changesFor({ blocks, places: about.places }).map((change) => ({
            changes: [first!, change],
            added: single.added + costOf(wall, change),
          })),
        ).slice(0, FOLLOWED),
      );
    });
  }

  private withAll<T>(wall: LiveWall, changes: readonly Change[], measure: () => T): T {
    const undo: Change[] = [];
    for (const change of changes) undo.unshift(make(wall, change));
    const value = measure();
    for (const change of undo) make(wall, change);
    return value;
  }

  private moves(changes: readonly Change[]): Move[] {
    return this.withAll(this.wall, changes, () => movesBetween(this.project, this.wall));
  }

  /** Every single change that is allowed and touches one of the blocks or places. */
  private changesFor({ blocks, places }: About): Change[] {
    const { cells, orientations, tradable, spare } = this.decisions;
    const { typeAt, orientationOf, cellOf } = this.wall;
    const movable = new Set(cells);
    const turns = blocks.flatMap((block) =>
      Array.from(orientations[block]!)
        .filter((stands) => stands !== orientationOf[block])
        .map((stands): Change => ({ kind: 'turn', block, stands })),
    );
    const from = new Set(blocks.map((block) => cellOf[block]!).filter((cell) => movable.has(cell)));
    const swaps = Array.from(from).flatMap((cell) =>
      Array.from(cells)
        .filter((other) => other !== cell && !(from.has(other) && other < cell))
        .map((other): Change => ({ kind: 'swap', cell, other })),
    );
    const trades = places.flatMap((place) => {
      const tip = typeAt[place]! % 2;
      const same = tradable[tip === 0 ? 0 : 1];
      if (!same.includes(place)) return [];
      const others = Array.from(same)
        .filter((other) => typeAt[other] !== typeAt[place])
        .map((other): Change => ({ kind: 'trade', place, other }));
      const spares = Array.from(spare.keys())
        .filter((type) => spare[type]! > 0 && type % 2 === tip && type !== typeAt[place])
        .map((wedge): Change => ({ kind: 'replace', place, wedge }));
      return [...others, ...spares];
    });
    return [...turns, ...swaps, ...trades];
  }
}

/** What a finding is about: changes are looked for on these blocks and places. */
interface About {
  readonly blocks: readonly number[];
  readonly places: readonly number[];
}

/** What is taken in hand first: the block that turns, the cell that is emptied, the wedge that goes. */
function wayOf(change: Change): string {
  if (change.kind === 'turn') return `turn ${change.block}`;
  return change.kind === 'swap' ? `swap ${change.cell}` : `trade ${change.place}`;
}

function sameChanges(one: Candidate, other: Candidate): boolean {
  return JSON.stringify(one.changes) === JSON.stringify(other.changes);
}

function byCost(candidates: readonly Candidate[]): Candidate[] {
  return candidates.toSorted((one, other) => one.added - other.added);
}

function firstThat(
  mends: (one: Candidate) => boolean,
  candidates: readonly Candidate[],
  most: number,
): Candidate[] {
  const found: Candidate[] = [];
  for (const candidate of candidates) {
    if (found.length === most) break;
    if (mends(candidate)) found.push(candidate);
  }
  return found;
}
