// Text whose fractions are set as fractions and stay on one line with the whole number before them (14 1/2"). It does not use the
// font's fraction feature, which would shrink the whole numbers too.

/** `inDrawing` for the text of an SVG drawing. */
export function Fractions({ text, inDrawing = false }: { text: string; inDrawing?: boolean }) {
  const Part = inDrawing ? 'tspan' : 'span';
  const kept = text.replace(/(\d) (\d+\/\d+)/g, '$1\u00a0$2');
  return kept.split(/(\d+\/\d+)/).map((part, index) =>
    index % 2 === 0 ? (
      part
    ) : (
      // biome-ignore lint/suspicious/noArrayIndexKey: parts of one text in order
      <Part key={index} className="fraction">
        {part}
      </Part>
    ),
  );
}
