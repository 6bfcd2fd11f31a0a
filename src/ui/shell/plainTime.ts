// Formats a day and a time in a way that is the same in every country.

/** Year-month-day and hours:minutes (ISO 8601 order) by the clock of this device: 2031-04-09 17:05. */
export function plainTime(at: Date): string {
  const two = (part: number) => String(part).padStart(2, '0');
  const day = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return `${day} ${two(at.getHours())}:${two(at.getMinutes())}`;
}
