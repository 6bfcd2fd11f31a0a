export function auditTold(answer: string): {
  readonly known: readonly string[] | null;
  readonly words: string;
};
