import { describe, expect, it } from 'vitest';
import { budgetFor, capSeconds, EFFORT_NAMES } from '../../../src/arrange/search/effort';

describe('a shuffle', () => {
  it('looks longer for more blocks and for more effort, with a cap far above', () => {
    for (const effort of EFFORT_NAMES) {
      const [few, many] = [budgetFor(effort, 6), budgetFor(effort, 80)];
      expect(few.steps).toBeLessThan(many.steps);
      expect(many.milliseconds).toBe(1000 * capSeconds(effort));
    }
    const steps = EFFORT_NAMES.map((effort) => budgetFor(effort, 80).steps);
    expect(steps).toEqual(steps.toSorted((one, other) => one - other));
  });
});
