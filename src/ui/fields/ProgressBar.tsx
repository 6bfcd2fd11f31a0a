// How far long work is, as a bar; where nothing is known of it the bar only says that it goes on.

/** `label`: what is done, already said. `share`: what of it is done, 0–1; null where that is not known. */
export function ProgressBar({ label, share }: { label: string; share: number | null }) {
  const part = share === null ? null : Math.min(1, share);
  return (
    <div
      className="progress"
      role="progressbar"
      aria-label={label}
      aria-valuenow={part === null ? undefined : Math.round(100 * part)}
      aria-valuemin={0}
      aria-valuemax={100}
    >
      {part === null ? <div className="unknown" /> : <div style={{ transform: `scaleX(${part})` }} />}
    </div>
  );
}
