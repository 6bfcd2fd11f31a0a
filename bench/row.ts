// One line of the bench's table. Speeds are ratios within one run (times the yardstick run beside it), never bare seconds.
export interface BenchRow {
  /** What is measured, in the trade's words. */
  readonly name: string;
  /** What it has to reach, with its sign: "≤ 1.5 × plain", "≥ 95 %". */
  readonly toReach: string;
  readonly measured: string;
  readonly ok: boolean;
}

/** How much is measured: a few of what there is, in some seconds, or all of it, which may take minutes. */
export type Extent = 'sample' | 'all';
