// Project files made wrong: by structure (a key gone, a value of another kind or size, a list far too long), and byte by byte.
import type { dice } from '../tests/balance/tops';

export type Chance = ReturnType<typeof dice>;
type Parent = Record<string, unknown> | unknown[];

/** One of a list. */
export function one<T>(list: readonly T[], chance: Chance): T {
  return list[chance.below(list.length)]!;
}

const TEXTS = ['', ' ', '0', 'null', '#12345g', '__proto__', 'constructor', '../../etc', '=1+1', '<img src=x onerror=y>', '\u202Eevil', '🧵', '\uD800'] as const; // biome-ignore format: a list
const NUMBERS = [0, -0, -1, 1, 0.5, 0.5001, 0.50001, 1e-9, 1e9, 1e308, -1e308, 2 ** 53, 0.1 + 0.2, 120, 4000.0001] as const; // biome-ignore format: a list

/** A value that does not belong; now and then one that is very large. */
function oddValue(chance: Chance): unknown {
  switch (chance.below(9)) {
    case 0:
      return one(TEXTS, chance);
    case 1:
    case 2:
      return one(NUMBERS, chance);
    case 3:
      return one([null, true, false], chance);
    case 4:
      return one([[], {}, [[]], [null], { kind: 'none' }], chance);
    case 5:
      return 'x'.repeat(10 ** chance.below(6));
    case 6:
      return Array.from({ length: 10 ** chance.below(5) }, () => ({ block: 1 }));
    case 7:
      return nested(10 ** chance.below(4));
    default:
      return chance.part() * 10 ** chance.below(8);
  }
}

function nested(depth: number): unknown {
  let value: unknown = 1;
  for (let level = 0; level < depth; level += 1) value = [value];
  return value;
}

/** A random object or list of a document with one of its keys; deep ones are as likely as shallow ones. */
function placeIn(document: Parent, chance: Chance): { parent: Parent; key: string } {
  let parent = document;
  for (;;) {
    const keys = Object.keys(parent);
    if (keys.length === 0) return { parent, key: 'x' };
    const key = one(keys, chance);
    const value = (parent as Record<string, unknown>)[key];
    if (typeof value !== 'object' || value === null || chance.below(4) === 0) return { parent, key };
    parent = value as Parent;
  }
}

/** Makes one to four changes in a document of plain data, in place. */
export function mutate(document: Record<string, unknown>, chance: Chance): void {
  for (let left = 1 + chance.below(4); left > 0; left -= 1) {
    const { parent, key } = placeIn(document, chance);
    changeAt(parent as Record<string, unknown>, key, document, chance);
  }
}

function changeAt(parent: Record<string, unknown>, key: string, document: Parent, chance: Chance): void {
  const value = parent[key];
  switch (chance.below(7)) {
    case 0:
      if (Array.isArray(parent)) parent.splice(Number(key), 1);
      else delete parent[key];
      return;
    case 1:
      parent[one(TEXTS, chance)] = oddValue(chance);
      return;
    case 2: {
      const other = placeIn(document, chance);
      parent[key] = structuredClone((other.parent as Record<string, unknown>)[other.key]);
      return;
    }
    case 3:
      if (Array.isArray(parent))
        parent.push(...Array.from({ length: 10 ** chance.below(4) }, () => structuredClone(value)));
      else parent[key] = [value, value];
      return;
    case 4:
      // A little off, which a reader may overlook.
      parent[key] =
        typeof value === 'number' ? value * one([1.0001, -1, 0.01, 1000, 1e-6], chance) : oddValue(chance);
      return;
    case 5:
      parent[key] = typeof value === 'string' ? value + one(TEXTS, chance) : oddValue(chance);
      return;
    default:
      parent[key] = oddValue(chance);
  }
}

/** The bytes of a text with one to eight of them, or runs of them, made wrong. */
export function mutatedBytes(text: string, chance: Chance): Uint8Array {
  let bytes = Buffer.from(text);
  for (let left = 1 + chance.below(8); left > 0; left -= 1) bytes = changedBytes(bytes, chance);
  return bytes;
}

function changedBytes(bytes: Buffer<ArrayBuffer>, chance: Chance): Buffer<ArrayBuffer> {
  if (bytes.length === 0) return Buffer.from([chance.below(256)]);
  const at = chance.below(bytes.length);
  const to = Math.min(bytes.length, at + 1 + chance.below(200));
  const spliced = (...middle: Uint8Array[]) =>
    Buffer.concat([bytes.subarray(0, at), ...middle, bytes.subarray(to)]);
  switch (chance.below(6)) {
    case 0:
      return bytes.fill(chance.below(256), at, at + 1);
    case 1:
      return spliced();
    case 2:
      return spliced(bytes.subarray(at, to), bytes.subarray(at, to));
    case 3:
      return bytes.subarray(0, at);
    case 4:
      return spliced(Buffer.from(one(['\0', '\uFEFF', '"', '{', ']', ',', '\\u0000', '9e999', '-'], chance)));
    default:
      return spliced(Buffer.from([0xff, 0xfe, 0xc3, 0x28]));
  }
}
