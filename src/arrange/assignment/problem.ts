export interface QuadraticTerm {
  flow: Float64Array;
  distance: Float64Array;
  skew: boolean;
}
export interface ReducedProblem {
  size: number;
  terms: QuadraticTerm[];
  linear: Float64Array;
}
