// The licences of the packages in the build, as the file reads that Vite writes of them. scripts/licences.ts checks the file, the
// dialog shows it.

/** The file in the build with the texts. */
export const LICENCES = 'licences.md';

/** A package in the build; `kind` is an SPDX expression, empty where none is named. */
export interface Licence {
  readonly name: string;
  readonly kind: string;
  readonly text: string;
}

/** The packages of a file of licences in its order; none where the text is no such file. */
export function licencesIn(file: string): Licence[] {
  return file
    .split(/^## /m)
    .slice(1)
    .map((part) => {
      const [head = '', ...body] = part.split('\n');
      const [, name = head, kind = ''] = /^(.+) - \S+ \((.*)\)$/.exec(head) ?? [];
      return { name, kind, text: body.join('\n').trim() };
    });
}
