// Owns the search for a good assignment as something that goes on for as long as one likes: short tabu runs from children of a
// population, the best of all kept. Seeded and repeatable; when to stop is solve's business.
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { reducedBound } from './bound';
import { bestOfAll, MOST_ENUMERATED } from './enumerate';
import { placeSymmetries } from './placeSymmetry';
import { Population } from './population';
import { type AssignmentProblem, assignmentCost, type ReducedProblem, reduceAssignment } from './problem';
import { SwapTable } from './swapTable';
import { TabuRun } from './tabuRun';

/** Iterations of a tabu run, times the free items. */
const RUN_LENGTH = 20;

/** Why no better arrangement can exist, if it is known. */
export type AssignmentProof = 'boundReached' | 'allLookedAt' | 'none';

export class AssignmentSearch {
  /** Item → place of the best arrangement so far, and its cost. */
  readonly places: Int32Array;
  cost = Number.POSITIVE_INFINITY;
  /** Swaps made, or arrangements looked at where all are. */
  iterations = 0;
  /** No arrangement costs less. Gilmore–Lawler; the cost itself where all arrangements were looked at. */
  readonly lowerBound: number;
  proof: AssignmentProof = 'none';

  private readonly reduced: ReducedProblem;
  private readonly run: TabuRun | null;
  private readonly population: Population | null;
  private offered = true;

  /** Any whole number is a seed. Throws where the problem does not fit together. */
  constructor(
    private readonly problem: AssignmentProblem,
    seed: number,
  ) {
    const reduced = reduceAssignment(problem);
    this.reduced = reduced;
    this.places = problem.fixed ? problem.fixed.slice() : new Int32Array(problem.size);
    if (reduced.size <= MOST_ENUMERATED) {
      const { places, looked } = bestOfAll(reduced);
      this.take(places);
      this.iterations = looked;
      this.lowerBound = this.cost;
      this.proof = 'allLookedAt';
      this.run = null;
      this.population = null;
      return;
    }
    const random = xoroshiro128plus(seed);
    this.lowerBound = reducedBound(reduced);
    this.run = new TabuRun(new SwapTable(reduced), reduced.grain, random);
    this.population = new Population(reduced.size, placeSymmetries(reduced), random);
  }

  /** Makes up to `most` swaps more; true when the cost is down to `enough` or to the bound, so that more would be idle. */
  advance(most: number, enough = Number.NEGATIVE_INFINITY): boolean {
    const { run, population, reduced } = this;
    if (!run || !population) return true;
    const goal = Math.max(enough, this.lowerBound);
    for (let left = most; left > 0 && this.cost - goal >= reduced.grain; ) {
      if (run.ended) {
        if (!this.offered) population.offer(run.bestPlaces, run.bestCost);
        this.offered = false;
        run.begin(population.next(), RUN_LENGTH * reduced.size);
      }
      const made = run.advance(left, goal - reduced.constant);
      left -= Math.max(1, made);
      this.iterations += made;
      if (run.bestCost + reduced.constant < this.cost - reduced.grain) this.take(run.bestPlaces);
    }
    if (this.cost - this.lowerBound < reduced.grain) this.proof = 'boundReached';
    return this.cost - goal < reduced.grain;
  }

  private take(places: Int32Array): void {
    const { items, freePlaces } = this.reduced;
    items.forEach((item, at) => {
      this.places[item] = freePlaces[places[at]!]!;
    });
    this.cost = assignmentCost(this.problem, this.places);
  }
}
