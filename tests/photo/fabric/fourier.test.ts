// Autocorrelation by the fast transform is the sum of products, added up one by one.
import { expect, it } from 'vitest';
import { autocorrelate, complexSquare } from '../../../src/photo/fabric/fourier';
import { chance } from '../render/clothLight';

it.each([1, 2, 4, 8, 16])('on squares of %i the same as by adding up', (side) => {
  const random = chance(side);
  const square = complexSquare(side);
  for (const part of [square.real, square.imaginary]) for (const at of part.keys()) part[at] = random() - 0.5;
  const [real, imaginary] = [square.real.slice(), square.imaginary.slice()];
  autocorrelate(square);
  for (let lag = 0; lag < side * side; lag += 1) {
    let sum = 0;
    for (let at = 0; at < side * side; at += 1) {
      const column = ((at % side) + (lag % side)) % side;
      const row = (Math.floor(at / side) + Math.floor(lag / side)) % side;
      sum += real[at]! * real[row * side + column]! + imaginary[at]! * imaginary[row * side + column]!;
    }
    expect(square.real[lag]).toBeCloseTo(sum, 9);
  }
});
