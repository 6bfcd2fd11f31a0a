// ΔE00 of two written colours, as plain cloths are compared.
import { ciede2000 } from '../../src/colour/difference';
import { labD65Of, linearOfHex } from '../../src/colour/spaces';

export function difference(one: string, other: string): number {
  return ciede2000(labD65Of(linearOfHex(one)), labD65Of(linearOfHex(other)));
}
