// Looks through data for what should not be sent to a worker. Arrays of numbers, plain objects, arrays and primitives may.

/** The path of the first part that is not plain data, with what it is; null when all is plain. */
export function notPlain(value: unknown, path = 'message'): string | null {
  if (typeof value === 'function' || typeof value === 'symbol' || typeof value === 'bigint')
    return `${path} is a ${typeof value}`;
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return null;
  const kind = Object.getPrototypeOf(value) as unknown;
  if (!Array.isArray(value) && kind !== Object.prototype && kind !== null)
    return `${path} is a ${value.constructor.name}`;
  for (const [key, part] of Object.entries(value)) {
    const found = notPlain(part, `${path}.${key}`);
    if (found) return found;
  }
  return null;
}
