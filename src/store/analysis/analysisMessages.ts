// What goes between the page and the worker that analyses: plain data both ways.
import type { Effect, Proposal } from '../../arrange/mend/proposals';
import type { WedgeOffers } from '../../arrange/mend/wedgeOffers';
import type { Move } from '../../model/moves';
import type { BlockId, Project } from '../../model/project';
import type { Balance, BalanceFigures } from './analysis';

export type ToAnalyst =
  /** Parts of the project that are not as they were in the last message; all of them in the first. */
  | { readonly kind: 'analyse'; readonly number: number; readonly parts: Partial<Project> }
  /** Ways to mend a finding or a single clash of the analysis `about`. */
  | { readonly kind: 'propose'; readonly number: number; readonly about: number; readonly finding: string }
  /** What these moves would do to the project of the analysis `about`. */
  | {
      readonly kind: 'effect';
      readonly number: number;
      readonly about: number;
      readonly moves: readonly Move[];
    }
  /** The wedges that could lie in a place of a block, from 0. */
  | {
      readonly kind: 'offers';
      readonly number: number;
      readonly about: number;
      readonly block: BlockId;
      readonly place: number;
    };

/** A balance without its project, which the page has; without what is the same as in the analysis told before it. */
export interface BalanceNews extends BalanceFigures {
  readonly seams: SeamsNews | null;
}

/** Seams without what cannot be sent: how a fabric's colours are found, and what was measured so far. */
export interface SeamsNews extends Omit<Balance['seams'], 'cloths' | 'radialMemo'> {
  readonly cloths: Omit<Balance['seams']['cloths'], 'clothOf'>;
}

export type FromAnalyst =
  | { readonly kind: 'balance'; readonly number: number; readonly news: BalanceNews }
  | { readonly kind: 'proposals'; readonly number: number; readonly proposals: readonly Proposal[] }
  | { readonly kind: 'effect'; readonly number: number; readonly effect: Effect }
  | { readonly kind: 'offers'; readonly number: number; readonly offers: WedgeOffers }
  /** The analysis it is about has made room for later ones. */
  | { readonly kind: 'gone'; readonly number: number }
  | { readonly kind: 'failed'; readonly number: number; readonly reason: string };
