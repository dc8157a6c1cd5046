import type { FieldMachine, HaulStep } from '../core/book/facts.ts';
import type { SpanName } from '../core/intent.ts';
import type { Language, PersonId } from '../core/roster.ts';
import type { Lb, Minutes } from '../core/units.ts';

export type Needs = null | 'name' | 'any' | 'setting';

/** What a phrase says, before the names, numbers and times around it are added. */
export type Sign =
  /**
   * `tells`: the phrase is itself the cause ("flat tire"). `needs`: what must stand beside a word too common to count
   * alone in a shared room: a truck or place ("leaving"), or a time at least ("left"); `setting`: nothing, but it gives
   * way to whatever else is said ("at the field").
   * `place`: the number in the phrase is the truck's own place in line, so one less stand ahead of it.
   */
  | { topic: 'haul'; step: HaulStep; tells: boolean; needs: Needs; place: boolean }
  | { topic: 'ticket' }
  /** `ahead` null: the number in the phrase. `mine`: counted by one who stands in it. */
  | { topic: 'line'; ahead: number | null; mine: boolean }
  | { topic: 'pilers'; open: number | 'said' | null; down: number | 'said' | 'all' | null }
  | { topic: 'station'; open: boolean; ahead: boolean }
  | { topic: 'turned-away' }
  | { topic: 'root' }
  | { topic: 'crown'; sound: boolean }
  | { topic: 'dig' }
  /** Null = by who says it. */
  | { topic: 'acres'; machine: FieldMachine | null }
  /** The digger or topper. */
  | { topic: 'machine'; runs: boolean }
  | { topic: 'take-truck' }
  | { topic: 'withdraw' }
  /** `reversed`: the wrong one is named first ("not truck 3, truck 4"). */
  | { topic: 'correct'; reversed: boolean }
  | { topic: 'acknowledge' }
  | { topic: 'stop' }
  | { topic: 'resume' }
  | { topic: 'drill'; ends: boolean }
  | { topic: 'shift'; off: boolean | null; noticesWhenOff: boolean | null }
  | { topic: 'language'; language: Language }
  | { topic: 'ask'; about: About; own: boolean };

export type About =
  | 'line'
  | 'leave'
  | 'fleet'
  | 'tons'
  | 'loads'
  | 'left'
  | 'board'
  | 'truck'
  | 'where-to'
  | 'may-dig'
  | 'unseen-notice'
  | 'outlook'
  | 'outlook-today'
  | 'outlook-tomorrow'
  | 'tickets'
  | 'help'
  | 'people'
  | 'trucks'
  | 'fields'
  | 'stations'
  | 'limits';

/** A name as said, and the entries it may stand for: one where it is clear, none where it is on no list. */
export interface Named {
  ids: readonly string[];
  said: string;
}

/** Where a clock word stands: "closed till 6", "in 10:05 out 10:31", "at 7". */
export type Lead = 'at' | 'till' | 'in' | 'out';
export type Role = 'gross' | 'tare' | 'net';
/** "Tons" are the operation's own. */
export type Unit = 'lb' | 'kg' | 'tons' | 'short tons' | 'tonnes';

/**
 * A time as said. `half`: which half of the day; `either` where 7 may be morning or evening; `exact` on a 24-hour clock.
 * `days`: yesterday -1, tomorrow 1; null where no day was named. `fromNowMin`: "20 min ago" is -20.
 */
export type ClockWords =
  | { hour: number; minute: number; half: 'am' | 'pm' | 'either' | 'exact'; days: number | null }
  | { fromNowMin: Minutes };

/** A piece of a message that means something whatever stands around it. `said`: as the person wrote it. */
export type Slot = { said: string } & (
  | { slot: 'truck'; trucks: readonly Named[] }
  /** "North" may be a field or a station; what is said of it tells. */
  | { slot: 'place'; fields: readonly string[]; stations: readonly string[] }
  | { slot: 'person'; id: PersonId }
  | { slot: 'clock'; clock: ClockWords; lead: Lead | null }
  | { slot: 'number'; text: string; lead: Lead | null }
  | { slot: 'ordinal'; text: string }
  | { slot: 'weight'; role: Role | null; lb: Lb; tons: boolean }
  | { slot: 'degrees'; text: string; unit: 'F' | 'C' | null }
  /** `other`: one that nothing here can be asked of. */
  | { slot: 'span'; span: SpanName | 'other' }
  | { slot: 'ticket'; serial: string | null }
);
export type SlotOf<K extends Slot['slot']> = Extract<Slot, { slot: K }>;

export const slotsOf = <K extends Slot['slot']>(slots: readonly Slot[], kind: K): SlotOf<K>[] =>
  slots.filter((slot): slot is SlotOf<K> => slot.slot === kind);

/** A piece of the message: a slot, or a word or mark that is none. */
export type Element = { start: number; end: number } & (
  { is: 'word'; text: string } | { is: 'slot'; slot: Slot } | { is: 'break' } | { is: 'question' }
);
