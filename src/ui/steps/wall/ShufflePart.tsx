// The shuffle for balance.
export function ShufflePart() {
  return null;
}
