import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { serviceWorkerFor } from '../../scripts/offline/plugin';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'wedgewall-build-'));
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'index.html'), '<html></html>');
  writeFileSync(join(folder, 'assets', 'worker-1.js'), 'one');
  writeFileSync(join(folder, 'sw.js'), 'the one before');
});
afterEach(() => rmSync(folder, { recursive: true }));

const lines = () => serviceWorkerFor(folder, '// keep\n').split('\n');

describe('what keeps the build in the browser', () => {
  it('names every file of the build but itself', () => {
    expect(lines()[1]).toBe('const FILES = ["assets/worker-1.js","index.html"];');
    expect(lines()[2]).toBe('// keep');
  });

  it('has another version when any file or the worker itself is other, and the same for the same build', () => {
    const [version] = lines();
    expect(lines()[0]).toBe(version);
    writeFileSync(join(folder, 'sw.js'), 'another');
    expect(lines()[0]).toBe(version);
    writeFileSync(join(folder, 'assets', 'worker-1.js'), 'two');
    expect(lines()[0]).not.toBe(version);
    const [now] = lines();
    expect(serviceWorkerFor(folder, '// other\n').split('\n')[0]).not.toBe(now);
  });
});
