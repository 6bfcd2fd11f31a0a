// What goes between the store and the worker that makes sets: plain data both ways. It is sent a SetMaking.
import type { MadeSets } from '../../cutting/sets/randomSets';

export type MadeOrReason = { readonly made: MadeSets } | { readonly reason: string };
