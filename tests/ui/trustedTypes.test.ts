// What the page's Trusted Types let through: all prints the tool can draw, and no markup that could run or fetch anything.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { patternsFor } from '../../src/drawing/blockPaths';
import { NO_HREFS } from '../../src/drawing/photos';
import { type Fabric, PRINT_MOTIFS } from '../../src/model/project';
import { figuresOnly, ownScriptsOnly } from '../../src/ui/trustedTypes';
import { photographed } from '../model/picture/images';
import { runs } from '../runs';

const cloth: fc.Arbitrary<Fabric> = fc.record({
  id: fc.string({ minLength: 1, maxLength: 20, unit: 'binary' }),
  name: fc.string(),
  colour: fc.constantFrom('#123456', '#fefefe'),
  background: fc.boolean(),
  cloth: fc.record({
    kind: fc.constant('print' as const),
    print: fc.record({
      motif: fc.constantFrom(...PRINT_MOTIFS),
      inks: fc.constantFrom<string[]>(['#000000'], ['#aabbcc', '#ff0000']),
      repeat: fc.double({ min: 0.125, max: 12, noNaN: true }),
      angle: fc.double({ min: -180, max: 180, noNaN: true }),
      seed: fc.nat(10_000),
    }),
  }),
});

it('are the prints of every motif, colour, turn and id', () => {
  fc.assert(
    fc.property(cloth, (fabric) => {
      for (const { markup } of patternsFor([fabric], [0, 45, 90], NO_HREFS))
        expect(figuresOnly(markup)).toBe(markup);
    }),
    { numRuns: runs(67, 200), seed: 12 },
  );
});

it('are the photographs of fabrics, whose pictures were made in the page', () => {
  const photo = photographed('a'.repeat(64), { angle: -12.5, width: 1.375 });
  const hrefOf = () => 'blob:https://quilts.example/0f8fad5b-d9cb-469f-a165-70867728950e';
  const shown = patternsFor([photo], [0, 45, 90], hrefOf);
  expect(shown[0]!.markup).toContain('<image');
  for (const { markup } of shown) expect(figuresOnly(markup)).toBe(markup);
});

it.each([
  '<script>alert(1)</script>',
  '<img src=x onerror=alert(1)>',
  '<path d="M0 0" onload="alert(1)"/>',
  '<pattern id="a"><script/></pattern>',
  '<pattern href="https://example.org/x.svg#a"/>',
  '<pattern xlink:href="data:image/svg+xml,x"/>',
  '<foreignObject><iframe></iframe></foreignObject>',
  '<path d="M0 0"/> text',
  '<path d=M0/>',
  '<use href="#a"/>',
  '<image x="0" y="0" width="1" height="1" preserveAspectRatio="none" href="https://example.org/a.png"/>',
  '<image x="0" y="0" width="1" height="1" preserveAspectRatio="none" href="data:image/svg+xml,x"/>',
  '<image x="0" y="0" width="1" height="1" preserveAspectRatio="none" href="blob:a" onload="alert(1)"/>',
  '<image href="blob:a"><script/></image>',
])('are not %s', (markup) => {
  expect(() => figuresOnly(markup)).toThrow(TypeError);
});

it('are the page’s own scripts and no others', () => {
  const page = 'https://quilts.example/wall/';
  for (const own of ['./assets/worker.js', '/sw.js', 'https://quilts.example/a.js'])
    expect(ownScriptsOnly(own, page)).toBe(own);
  for (const other of ['https://elsewhere.example/a.js', '//elsewhere.example/a.js', 'data:text/javascript,1', 'http://quilts.example/a.js'])
    expect(() => ownScriptsOnly(other, page)).toThrow(TypeError);
}); // biome-ignore format: short
