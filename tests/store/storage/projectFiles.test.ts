import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { projectFileName } from '../../../src/store/storage/projectFiles';

describe('the name of a project file', () => {
  it.each([
    ['River stones, 2nd try!', 'river-stones-2nd-try.wedgewall.json'],
    ['', 'quilt.wedgewall.json'],
    ['../../etc/passwd', 'etc-passwd.wedgewall.json'],
    ['Größe', 'größe.wedgewall.json'],
    ['夏の庭', '夏の庭.wedgewall.json'],
    ['CON', 'quilt-con.wedgewall.json'],
    ['🧵️', 'quilt.wedgewall.json'],
    ['❤️‍🔥 Fire ❤️', 'fire.wedgewall.json'],
    ['क्षितिज', 'क्षितिज.wedgewall.json'],
  ])('of "%s" is %s', (name, expected) => {
    expect(projectFileName(name)).toBe(expected);
  });

  it('has no separator, control sign or surplus length, whatever the project is called', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (name) => {
        expect(projectFileName(name)).toMatch(/^[\p{L}\p{N}][\p{L}\p{M}\p{N}-]{0,66}\.wedgewall\.json$/u);
      }),
      { seed: 20 },
    );
  });

  it('stays its own where long names begin alike', () => {
    const start = 'river '.repeat(12);
    const names = Array.from({ length: 300 }, (_, at) => projectFileName(`${start}${at}`));
    expect(new Set(names).size).toBe(300);
  });
});
