// Moves the focus into the panel, to the form of a fabric that has just opened there.
export function focusForm(): void {
  requestAnimationFrame(() => document.querySelector<HTMLElement>('[data-opened]')?.focus());
}
