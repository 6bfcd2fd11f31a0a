// Text whose fractions are set as fractions and stay on one line with the whole number before them (14 1/2"). It does not use the
// font's fraction feature, which would shrink the whole numbers too.

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
