import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { fetchWhileIdle, later, PartMissing } from '../../src/ui/later';
import { Shown } from '../../src/ui/Shown';

const Part = () => createElement('p', null, 'here');

/** A part whose code comes or does not, as `there` says, and how often it was asked for. */
function part() {
  const asked = { times: 0, there: true };
  const made = later<object>(async () => {
    asked.times += 1;
    if (!asked.there) throw new Error('away');
    return Part;
  });
  return { asked, made };
}

describe('A part that comes later', () => {
  it('is fetched once, and then known', async () => {
    const { asked, made } = part();
    expect(made.fetched()).not.toHaveProperty('value');
    expect(await made.fetched()).toBe(Part);
    expect(await made.fetched()).toBe(Part);
    expect(asked.times).toBe(1);
  });

  it('marks its place until its code is there, and is shown at once from then on', async () => {
    const { made } = part();
    const shown = () => renderToStaticMarkup(createElement(Shown<object>, { part: made, given: {} }));
    expect(shown()).toContain('aria-busy="true"');
    await made.fetched();
    expect(shown()).toBe('<p>here</p>');
  });

  it('fails in the same way however often it is drawn, until it is asked for anew', async () => {
    const { asked, made } = part();
    asked.there = false;
    const failed = made.fetched();
    await expect(failed).rejects.toBeInstanceOf(PartMissing);
    expect(made.fetched()).toBe(failed);
    expect(asked.times).toBe(1);
    asked.there = true;
    await failed.catch((error: PartMissing) => error.forget());
    expect(await made.fetched()).toBe(Part);
  });

  it('that could not be had ahead of time is asked for when it is shown', async () => {
    const { asked, made } = part();
    asked.there = false;
    await made.ahead();
    asked.there = true;
    expect(await made.fetched()).toBe(Part);
    expect(asked.times).toBe(2);
  });

  it('comes while the page is idle, each after a pause, those too that a part brings, and one that fails holds up none', async () => {
    const [broken, whole] = [part(), part()];
    broken.asked.there = false;
    const inner = part();
    const outer = later<object>(async () => {
      later<object>(async () => (await inner.made.fetched()) as typeof Part);
      return Part;
    });
    let pauses = 0;
    const before = whole.asked.times;
    await fetchWhileIdle(async () => {
      pauses += 1;
    });
    expect([before, whole.asked.times, broken.asked.times]).toEqual([0, 1, 1]);
    expect(outer.fetched()).toHaveProperty('value', Part);
    expect(inner.made.fetched()).toHaveProperty('value', Part);
    expect(pauses).toBeGreaterThanOrEqual(4);
  });
});
