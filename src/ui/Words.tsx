// Text with its fractions set as fractions, and a whole number kept together with the fraction after it.
import type { ReactNode } from 'react';

export function Words({ text }: { text: string }): ReactNode {
  const parts = text.replace(/(\d) (\d+\/\d+)/g, '$1\u00a0$2').split(/(\d+\/(?:2|4|8|16|3)(?!\d))/);
  if (parts.length === 1) return text;
  return parts.map((part, index) =>
    index % 2 === 1 ? (
      // biome-ignore lint/suspicious/noArrayIndexKey: the parts of one text never change places
      <span key={index} className="fraction">
        {part}
      </span>
    ) : (
      part
    ),
  );
}
