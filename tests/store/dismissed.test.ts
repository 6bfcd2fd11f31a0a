import { describe, expect, it } from 'vitest';
import { dismissHint, isDismissed } from '../../src/store/dismissed';

function area(): Storage {
  const texts = new Map<string, string>();
  return {
    getItem: (name: string) => texts.get(name) ?? null,
    setItem: (name: string, text: string) => void texts.set(name, text),
  } as Storage;
}

describe('a hint that was dismissed', () => {
  it('stays away, and takes no other hint with it', () => {
    const one = area();
    expect(isDismissed('wall', () => one)).toBe(false);
    dismissHint('wall', () => one);
    dismissHint('wall', () => one);
    expect([isDismissed('wall', () => one), isDismissed('wa', () => one)]).toEqual([true, false]);
    dismissHint('blocks', () => one);
    expect([isDismissed('wall', () => one), isDismissed('blocks', () => one)]).toEqual([true, true]);
  });

  it('does no harm in a browser that keeps nothing', () => {
    const closed = (): Storage => {
      throw new DOMException('no', 'SecurityError');
    };
    dismissHint('wall', closed);
    expect(isDismissed('wall', closed)).toBe(false);
  });
});
