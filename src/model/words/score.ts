/** What the score is, as the glossary has it; apart from it, because the first screen tells this one word's meaning and no other. */
export const SCORE_MEANS = 'How well the top is arranged: a random layout scores 100, and lower is better.';
