// Rows and columns in words: one row is told as one, wherever a wall or a top is told.
import { counted, type Phrase } from '../phrase';

export function rowWords({ rows, columns }: { readonly rows: number; readonly columns: number }): Phrase {
  return counted(rows, '1 row of {columns}', '{count} rows of {columns}', { columns });
}
