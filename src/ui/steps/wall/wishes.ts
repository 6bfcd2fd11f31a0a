// What the person asks of a shuffle; kept while the panel is open.
import type { Scopes } from '../../../arrange/decisions';
import type { Terms } from '../../../balance/terms';

export interface Wishes {
  readonly scopes: Scopes;
  readonly weights: Terms;
  readonly seconds: number;
}
