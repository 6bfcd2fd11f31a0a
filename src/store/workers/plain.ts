// What may go to a worker and back: plain data, so that it arrives as it was sent. A function cannot be sent at all; a Map is
// copied whole, memo and all, and compares by none of its entries, so it stays at home and a list goes instead.

/** Arrays of numbers that are sent as they are. */
type Numbers =
  | Int8Array
  | Uint8Array
  | Int16Array
  | Uint16Array
  | Int32Array
  | Uint32Array
  | Float32Array
  | Float64Array;

/**
 * The type itself where it is plain data; where a part of it is a function, a Map or Set (weak ones too), a promise or a
 * symbol, that part is `never`, so that `T extends Plain<T>` fails and the compiler names the part.
 */
export type Plain<T> = T extends string | number | boolean | null | undefined | Numbers
  ? T
  : T extends
        | ((...given: never[]) => unknown)
        | ReadonlyMap<unknown, unknown>
        | ReadonlySet<unknown>
        | WeakMap<WeakKey, unknown>
        | WeakSet<WeakKey>
        | Promise<unknown>
        | symbol
        | bigint
    ? never
    : { [K in keyof T]: Plain<T[K]> };
