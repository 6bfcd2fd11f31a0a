// Whether the page scrolls as a whole, as it does in a low and narrow window, rather than its panes. Which windows these are is decided in
// shell/flow.css.

export function flows(): boolean {
  return getComputedStyle(document.documentElement).getPropertyValue('--flows') === '1';
}
