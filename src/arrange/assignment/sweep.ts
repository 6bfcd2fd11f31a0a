// Owns the one hot loop of the assignment search: mending the swap table after a swap, with the least entry of each
// row. Twice: as WebAssembly vectors, where they may run, and in plain code. Both give the same numbers, bit for bit.
import {
  add,
  and,
  assemble,
  below,
  type Code,
  I32,
  infinities,
  int,
  loadVector,
  local,
  setLocal,
  shiftLeft,
  spreadDouble,
  storeVector,
  V128,
  vector,
  whileTrue,
} from './wasmCode';

/** The arrays a sweep works on. `half` and `skew` are stride × stride; what counts lies right of the diagonal. */
export interface SweepArrays {
  /** The size, made even. */
  readonly stride: number;
  /** Must hold +∞ on and left of the diagonal and in the padding. */
  readonly half: Float64Array;
  readonly skew: Float64Array;
  /** a and b of the swap, 0 in the padding. */
  readonly flowChange: Float64Array;
  readonly distanceChange: Float64Array;
  /** Two numbers a row, written by the sweep; the lesser is the row's least entry of `half`. */
  readonly rowMinima: Float64Array;
  /** half(u,v) −= (a(u) − a(v))·(b(u) − b(v)) and skew(u,v) += a(u)·b(v) − a(v)·b(u), for all u < v. */
  readonly sweep: () => void;
}

const PAGE = 65_536;
/** Below this size the plain loop is as fast, and a table needs no memory object of its own. */
const SMALL = 12;

/** Room for a table of `size` items. `plain` forbids WebAssembly, for comparison. */
export function sweepArrays(size: number, plain: boolean): SweepArrays {
  const stride = size + (size % 2);
  const module = plain || size < SMALL ? undefined : compiledSweep();
  const counts = [stride * stride, stride * stride, stride, stride, stride * 2];
  const bytes = counts.reduce((sum, count) => sum + count * 8, 0);
  const memory = module && new WebAssembly.Memory({ initial: Math.ceil(bytes / PAGE) });
  const buffer = memory ? memory.buffer : new ArrayBuffer(bytes);
  let offset = 0;
  const [half, skew, flowChange, distanceChange, rowMinima] = counts.map((count) => {
    const view = new Float64Array(buffer, offset, count);
    offset += view.byteLength;
    return view;
  }) as [Float64Array, Float64Array, Float64Array, Float64Array, Float64Array];
  const arrays = { stride, half, skew, flowChange, distanceChange, rowMinima };
  if (!module || !memory) return { ...arrays, sweep: () => sweepPlainly(arrays) };
  const { run } = new WebAssembly.Instance(module, { arrange: { memory } }).exports as {
    run: (half: number, skew: number, a: number, b: number, minima: number, stride: number) => void;
  };
  const [atSkew, atA, atB, atMinima] = [skew, flowChange, distanceChange, rowMinima].map(
    (view) => view.byteOffset,
  ) as [number, number, number, number];
  return { ...arrays, sweep: () => run(0, atSkew, atA, atB, atMinima, stride) };
}

function sweepPlainly(arrays: Omit<SweepArrays, 'sweep'>): void {
  const { stride, half, skew, flowChange, distanceChange, rowMinima } = arrays;
  for (let u = 0; u < stride; u++) {
    const au = flowChange[u]!;
    const bu = distanceChange[u]!;
    let least = Number.POSITIVE_INFINITY;
    for (let v = u + 1, at = u * stride + u + 1; v < stride; v++, at++) {
      const av = flowChange[v]!;
      const bv = distanceChange[v]!;
      const value = half[at]! - (au - av) * (bu - bv);
      half[at] = value;
      skew[at]! += au * bv - av * bu;
      if (value < least) least = value;
    }
    rowMinima[2 * u] = least;
    rowMinima[2 * u + 1] = least;
  }
}

let compiled: WebAssembly.Module | 'notYet' | undefined = 'notYet';

/** The compiled sweep, or undefined where vectors are missing or the page's policy forbids WebAssembly. */
function compiledSweep(): WebAssembly.Module | undefined {
  if (compiled === 'notYet') {
    try {
      compiled = new WebAssembly.Module(sweepCode());
    } catch {
      compiled = undefined;
    }
  }
  return compiled;
}

/** The loop of `sweepPlainly` as vector code, two doubles at a time. */
function sweepCode(): Uint8Array<ArrayBuffer> {
  const [HALF, SKEW, A, B, MINIMA, STRIDE] = [0, 1, 2, 3, 4, 5] as const;
  const [U, AT, END, AU, BU, AV, BV, VALUE, LEAST] = [6, 7, 8, 9, 10, 11, 12, 13, 14] as const;
  const plus = (left: Code, right: Code) => vector(0xf0, left, right);
  const minus = (left: Code, right: Code) => vector(0xf1, left, right);
  const times = (left: Code, right: Code) => vector(0xf2, left, right);
  const lesser = (left: Code, right: Code) => vector(0xf6, left, right);
  const here = (base: number) => add(local(base), local(AT));
  const eight = (index: number) => shiftLeft(local(index), 3);
  const fall = times(minus(local(AU), local(AV)), minus(local(BU), local(BV)));
  const turn = minus(times(local(AU), local(BV)), times(local(AV), local(BU)));
  const pairOfEntries = [
    setLocal(AV, loadVector(here(A))),
    setLocal(BV, loadVector(here(B))),
    setLocal(VALUE, minus(loadVector(here(HALF)), fall)),
    storeVector(here(HALF), local(VALUE)),
    setLocal(LEAST, lesser(local(LEAST), local(VALUE))),
    storeVector(here(SKEW), plus(loadVector(here(SKEW)), turn)),
    setLocal(AT, add(local(AT), int(16))),
  ];
  const row = [
    setLocal(AU, spreadDouble(add(local(A), eight(U)))),
    setLocal(BU, spreadDouble(add(local(B), eight(U)))),
    setLocal(AT, shiftLeft(and(local(U), int(-2)), 3)),
    setLocal(LEAST, infinities),
    whileTrue(below(local(AT), local(END)), pairOfEntries),
    storeVector(add(local(MINIMA), shiftLeft(local(U), 4)), local(LEAST)),
    setLocal(HALF, add(local(HALF), local(END))),
    setLocal(SKEW, add(local(SKEW), local(END))),
    setLocal(U, add(local(U), int(1))),
  ];
  return assemble(
    [I32, I32, I32, I32, I32, I32],
    [I32, I32, I32, V128, V128, V128, V128, V128, V128],
    [setLocal(END, eight(STRIDE)), whileTrue(below(local(U), local(STRIDE)), row)],
  );
}
