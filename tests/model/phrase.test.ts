import { describe, expect, it } from 'vitest';
import { counted, isolated, phrase, speak } from '../../src/model/phrase';

describe('sentences for people', () => {
  it('fill in lengths in the unit asked for', () => {
    const words = phrase('They meet along {length}.', { length: { inches: 5.75 } });
    expect(speak(words)).toBe('They meet along 5 3/4".');
    expect(speak(words, 'cm')).toBe('They meet along 14.6 cm.');
  });

  it('join lists as people do', () => {
    const words = (list: string[]) => speak(phrase('Sets {sets}', { sets: { list } }));
    expect(words(['A', 'B', 'C'])).toBe('Sets A, B and C');
    expect(words(['A'])).toBe('Sets A');
    expect(words([])).toBe('Sets ');
  });

  it('hold other sentences, and are looked up in another language by their English', () => {
    const words = phrase('Undo: {change}', { change: phrase('turn block {block}', { block: 4 }) });
    expect(speak(words)).toBe('Undo: turn block 4');
    const german: Record<string, string> = {
      'Undo: {change}': 'Zurück: {change}',
      'turn block {block}': 'Block {block} drehen',
    };
    expect(speak(words, 'cm', (say) => german[say] ?? say)).toBe('Zurück: Block 4 drehen');
  });

  it('choose the singular for one only', () => {
    expect(speak(counted(1, 'add a block', 'add {count} blocks'))).toBe('add a block');
    expect(speak(counted(0, 'add a block', 'add {count} blocks'))).toBe('add 0 blocks');
  });

  it('close off names of the other direction on screen only, and leave all others as they are', () => {
    const words = phrase('{name} · {share} % · {names}', {
      name: 'ירוק 3',
      share: 12,
      names: { list: ['Rust', 'أزرق'] },
    });
    expect(speak(words, 'in', undefined, isolated)).toBe(
      '\u2068ירוק 3\u2069 · 12 % · Rust and \u2068أزرق\u2069',
    );
    expect(speak(words)).toBe('ירוק 3 · 12 % · Rust and أزرق');
    expect(isolated('Café 1/2 – 青')).toBe('Café 1/2 – 青');
    expect(isolated('\u202eturned')).toBe('\u2068\u202eturned\u2069');
  });

  it('show a name that was left out, so that the slip is seen', () => {
    expect(speak(phrase('Block {block}'))).toBe('Block {block}');
  });
});
