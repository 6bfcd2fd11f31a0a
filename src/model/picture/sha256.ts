// SHA-256 of bytes (FIPS 180-4), by which pictures are known. The browser's own lacks on pages that came over plain http, and no
// pure room may wait for it.

/** The SHA-256 as 64 digits, 0 to 9 and a to f. */
export function sha256(bytes: Uint8Array): string {
  const state = INITIAL.slice();
  const schedule = new Uint32Array(64);
  const whole = bytes.length - (bytes.length % 64);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  for (let at = 0; at < whole; at += 64) compress(state, schedule, view, at);
  const end = padded(bytes.subarray(whole), bytes.length);
  for (let at = 0; at < end.byteLength; at += 64) compress(state, schedule, end, at);
  return Array.from(state, (word) => word.toString(16).padStart(8, '0')).join('');
}

/** The rest of the message with its padding (section 5.1.1): one bit, zeros, and the length in bits. */
function padded(rest: Uint8Array, length: number): DataView {
  const end = new Uint8Array(rest.length < 56 ? 64 : 128);
  end.set(rest);
  end[rest.length] = 0x80;
  const view = new DataView(end.buffer);
  view.setUint32(end.length - 8, Math.floor(length / 2 ** 29));
  view.setUint32(end.length - 4, (length * 8) % 2 ** 32);
  return view;
}

/** Sections 4.2.2 and 5.3.3: the first 32 bits of the fractional parts of roots of the first primes. */
const PRIMES = Array.from({ length: 310 }, (_, at) => at + 2).filter((number) => isPrime(number));
const ROUND = Uint32Array.from(PRIMES.slice(0, 64), (prime) => fraction(Math.cbrt(prime)));
const INITIAL = Uint32Array.from(PRIMES.slice(0, 8), (prime) => fraction(Math.sqrt(prime)));

function isPrime(number: number): boolean {
  for (let by = 2; by * by <= number; by += 1) if (number % by === 0) return false;
  return true;
}

function fraction(root: number): number {
  return Math.floor((root % 1) * 2 ** 32);
}

/** One block of 64 bytes (section 6.2.2). */
function compress(state: Uint32Array, schedule: Uint32Array, view: DataView, from: number): void {
  for (let t = 0; t < 16; t += 1) schedule[t] = view.getUint32(from + 4 * t);
  for (let t = 16; t < 64; t += 1) {
    const [before, early] = [schedule[t - 2]!, schedule[t - 15]!];
    const one = turned(before, 17) ^ turned(before, 19) ^ (before >>> 10);
    const other = turned(early, 7) ^ turned(early, 18) ^ (early >>> 3);
    schedule[t] = one + schedule[t - 7]! + other + schedule[t - 16]!;
  }
  let [a, b, c, d, e, f, g, h] = state as unknown as [number, number, number, number, number, number, number, number]; // biome-ignore format: short
  for (let t = 0; t < 64; t += 1) {
    const sumE = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25);
    const first = (h + sumE + ((e & f) ^ (~e & g)) + ROUND[t]! + schedule[t]!) | 0;
    const sumA = turned(a, 2) ^ turned(a, 13) ^ turned(a, 22);
    const second = (sumA + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + first) | 0;
    d = c;
    c = b;
    b = a;
    a = (first + second) | 0;
  }
  const worked = [a, b, c, d, e, f, g, h];
  for (let at = 0; at < 8; at += 1) state[at]! += worked[at]!;
}

function turned(word: number, bits: number): number {
  return (word >>> bits) | (word << (32 - bits));
}
