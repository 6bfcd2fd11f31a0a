// Owns a very small assembler: WebAssembly instructions as byte lists, enough for one function over imported memory.
// Opcodes from the WebAssembly Core Specification 2.0 (W3C, 2022), section 5.4 (instructions) and 5.5 (modules).

export type Code = readonly number[];

export const I32 = 0x7f;
export const V128 = 0x7b;

/** Signed LEB128, the form of integer constants. */
function signed(value: number): number[] {
  const bytes: number[] = [];
  for (let rest = value; ; ) {
    const low = rest & 0x7f;
    rest >>= 7;
    if ((rest === 0 && (low & 0x40) === 0) || (rest === -1 && (low & 0x40) !== 0)) return [...bytes, low];
    bytes.push(low | 0x80);
  }
}

/** Unsigned LEB128, the form of lengths and indices. */
function unsigned(value: number): number[] {
  const bytes: number[] = [];
  for (let rest = value; ; ) {
    const low = rest & 0x7f;
    rest >>>= 7;
    if (rest === 0) return [...bytes, low];
    bytes.push(low | 0x80);
  }
}

export const local = (index: number): Code => [0x20, ...unsigned(index)];
export const setLocal = (index: number, value: Code): Code => [...value, 0x21, ...unsigned(index)];
export const int = (value: number): Code => [0x41, ...signed(value)];
export const add = (left: Code, right: Code): Code => [...left, ...right, 0x6a];
export const and = (left: Code, right: Code): Code => [...left, ...right, 0x71];
export const shiftLeft = (left: Code, bits: number): Code => [...left, ...int(bits), 0x74];
export const below = (left: Code, right: Code): Code => [...left, ...right, 0x49];

/** A vector instruction (prefix 0xfd) on what its operands leave on the stack. */
export const vector = (opcode: number, ...operands: readonly Code[]): Code => [
  ...operands.flat(),
  0xfd,
  ...unsigned(opcode),
];
const INFINITY: Code = [0, 0, 0, 0, 0, 0, 0xf0, 0x7f];
/** The vector of two doubles, both +∞. */
export const infinities: Code = [0xfd, 12, ...INFINITY, ...INFINITY];
/** The double at an address, in both lanes. */
export const spreadDouble = (address: Code): Code => [...address, 0xfd, 0x0a, 3, 0];
export const loadVector = (address: Code): Code => [...address, 0xfd, 0, 3, 0];
export const storeVector = (address: Code, value: Code): Code => [...address, ...value, 0xfd, 11, 3, 0];

/** Repeats the body as long as the condition holds, testing it first. */
export function whileTrue(condition: Code, body: readonly Code[]): Code {
  const leave = [0x45, 0x0d, 1];
  const again = [0x0c, 0];
  return [0x02, 0x40, 0x03, 0x40, ...condition, ...leave, ...body.flat(), ...again, 0x0b, 0x0b];
}

const MAGIC: Code = [0x00, 0x61, 0x73, 0x6d, 1, 0, 0, 0];

/** A module that imports memory `arrange.memory` and exports one function `run` without a result. */
export function assemble(parameters: Code, locals: Code, body: readonly Code[]): Uint8Array<ArrayBuffer> {
  const section = (id: number, content: Code) => [id, ...unsigned(content.length), ...content];
  const name = (text: string) => [text.length, ...new TextEncoder().encode(text)];
  const code = [...unsigned(locals.length), ...locals.flatMap((type) => [1, type]), ...body.flat(), 0x0b];
  return new Uint8Array([
    ...MAGIC,
    ...section(1, [1, 0x60, parameters.length, ...parameters, 0]),
    ...section(2, [1, ...name('arrange'), ...name('memory'), 2, 0, 1]),
    ...section(3, [1, 0]),
    ...section(7, [1, ...name('run'), 0, 0]),
    ...section(10, [1, ...unsigned(code.length), ...code]),
  ]);
}
