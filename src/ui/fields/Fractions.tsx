// Text with its fractions set as fractions, kept on one line with the whole number before: 14 1/2" as a maker reads it. Whole numbers beside them stay whole: the
// font's own fraction feature would shrink those too.

export function Fractions({ text }: { text: string }) {
  const kept = text.replace(/(\d) (\d+\/\d+)/g, '$1\u00a0$2');
  return kept.split(/(\d+\/\d+)/).map((part, index) =>
    index % 2 === 0 ? (
      part
    ) : (
      // biome-ignore lint/suspicious/noArrayIndexKey: parts of one text in order
      <span key={index} className="fraction">
        {part}
      </span>
    ),
  );
}
