// Keeps forms that are filled in part. They stay while the person is at another step, and are no part of the project or its
// history.
import type { ClothOnHand, Fabric, FabricId } from '../model/project';

/** A new row of cloth before its fabric is chosen. */
type Of<Row extends { readonly fabric: FabricId }> = Omit<Row, 'id' | 'fabric'> & {
  readonly fabric: FabricId | null;
};

export interface Draft<Values> {
  /** Whether the form is open. */
  readonly open: boolean;
  readonly values: Values;
}

export interface Drafts {
  readonly fabric?: Draft<Omit<Fabric, 'id'>>;
  readonly cloth?: Draft<Of<ClothOnHand>>;
}

export type DraftOf<K extends keyof Drafts> = NonNullable<Drafts[K]>;
