// What the person asks of a shuffle; kept while the panel is open.
import type { Scopes } from '../../../arrange/decisions';

export interface Wishes {
  readonly scopes: Scopes;
  readonly seconds: number;
}
