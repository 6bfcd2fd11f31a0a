// Choices of wedges for a whole block, with what a block is with each: evenChoices.ts finds them, a search gives them to blocks.
export interface Choices {
  /** Blocks all of whose wedges may be exchanged, and that are alike without them. */
  readonly blocks: Int32Array;
  readonly count: number;
  /** Wedge types, choice × place of a block: tip-up and tip-down in turn. */
  readonly types: Int32Array;
  /** Scaled figures of a block with them, choice × channel. */
  readonly figures: Float64Array;
  /** Σ figure², by choice. */
  readonly squares: Float64Array;
  /** Deviation of value (L*) and warmth from the mean, by choice. */
  readonly value: Float64Array;
  readonly warmth: Float64Array;
}
