/** Words of facts that intents use too; what they mean is at the top of facts.ts. */
import type { FieldId, PersonId, TruckId } from '../roster.ts';
import type { EpochMs, Lb } from '../units.ts';

/** The steps of a round trip, as a person may state them, and the two ways out of it (parked, down). */
export type HaulStep =
  | 'at-field'
  | 'loading'
  | 'left-field'
  | 'joined-line'
  | 'first-weighed'
  | 'dumped'
  | 'returning'
  | 'parked'
  | 'down'
  | 'up';

/** Machines of the field that are no trucks; what they do is at the top of facts.ts. */
export type FieldMachine = 'digger' | 'topper';

/** What an undo or a correction points at. */
export type EntryTarget =
  /** The newest entry that this person had sent before the undo was sent; of this truck where one is named. */
  | { by: 'latest'; person: PersonId; truck: TruckId | null }
  /** The entry made by that message (a reply, an edit or a deletion points at it). */
  | { by: 'message'; cause: string }
  | { by: 'serial'; serial: string };

/** What an entry may count or measure. */
export type Counted = 'line' | 'pilers' | 'acres' | 'root';

/** What a correction sets; null or absent = leave as it was. */
export interface Correction {
  truck: TruckId | null;
  field: FieldId | null;
  atMs: EpochMs | null;
  grossLb: Lb | null;
  tareLb: Lb | null;
  netLb: Lb | null;
  serial?: string;
  /** Trucks ahead, pilers, acres or °F. `of` null = whatever the newest entry counts. */
  count?: { value: number; of: Counted | null };
}

export type HoldReason = 'heat' | 'frost' | 'mud' | 'other';
