// The type of data that may go to a worker and back: plain data, which arrives as it was sent. A function cannot be sent; a
// Map is not sent because it may be a memo, which would be copied whole. Send a list instead.

/** Typed arrays, which may be sent. */
type Numbers =
  | Int8Array
  | Uint8Array
  | Int16Array
  | Uint16Array
  | Int32Array
  | Uint32Array
  | Float32Array
  | Float64Array;

/** A colour: three numbers, with a mark of its space that is in the type alone. */
type Triple = readonly [number, number, number];

/**
 * T itself if it is plain data. A part of T that is a function, a Map, a Set (weak ones too), a promise or a symbol becomes
 * `never`, so that `T extends Plain<T>` fails and the compiler names the part.
 */
export type Plain<T> = T extends string | number | boolean | null | undefined | Numbers | Triple
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
