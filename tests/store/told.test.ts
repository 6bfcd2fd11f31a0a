import { describe, expect, it } from 'vitest';
import { dismissHint, wasTold } from '../../src/store/told';

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
    expect(wasTold('wall', () => one)).toBe(false);
    dismissHint('wall', () => one);
    dismissHint('wall', () => one);
    expect([wasTold('wall', () => one), wasTold('wa', () => one)]).toEqual([true, false]);
    dismissHint('blocks', () => one);
    expect([wasTold('wall', () => one), wasTold('blocks', () => one)]).toEqual([true, true]);
  });

  it('does no harm in a browser that keeps nothing', () => {
    const closed = (): Storage => {
      throw new DOMException('no', 'SecurityError');
    };
    dismissHint('wall', closed);
    expect(wasTold('wall', closed)).toBe(false);
  });
});
