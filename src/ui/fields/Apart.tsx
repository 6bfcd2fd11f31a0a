// Words for screen readers alone that tell a control from others with the same words: 'Done' of which form, a print of which fabric.

export function Apart({ of }: { of: string }) {
  return <span className="hidden-text"> ({of})</span>;
}
