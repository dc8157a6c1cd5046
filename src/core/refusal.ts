import type { WeightRefusal } from './book/weights.ts';
import type { BookedTicket } from './haul/load.ts';
import type { FieldId, ListChange, StationId } from './roster.ts';
import type { EpochMs, Fahrenheit, Lb } from './units.ts';

/** Why something was not taken down. Nothing already recorded is lost by it. */
export type Refusal =
  | { refused: 'no-truck' }
  /** So many things of a message were taken, and none after them. */
  | { refused: 'too-many'; taken: number }
  /** A question about what a message meant, answered too late or twice. */
  | { refused: 'offer-over' }
  | { refused: 'no-field' }
  | { refused: 'no-station' }
  | { refused: 'more-than-field'; field: FieldId; acres: number; fieldAcres: number }
  | { refused: 'time-ahead'; atMs: EpochMs }
  | {
      refused: 'not-allowed';
      what: 'stop-dig' | 'resume-dig' | 'correct-others' | 'change-lists' | 'drill' | 'pass-on' | 'teach';
    }
  | WeightRefusal
  | { refused: 'serial-known'; ticket: BookedTicket }
  | { refused: 'nothing-to-undo' }
  | { refused: 'nothing-to-correct' }
  | { refused: 'nothing-to-see' }
  | { refused: 'dig-not-stopped' }
  | { refused: 'dig-stopped-already' }
  /** Heard late: what it was to change has changed since. */
  | { refused: 'order-overtaken' }
  | { refused: 'crowns-not-checked' }
  | { refused: 'drill-on-already' }
  | { refused: 'no-drill' }
  | { refused: 'no-such-entry'; list: ListChange['list']; name: string }
  | { refused: 'last-manager' }
  /** "Use this room", said to the bot alone. */
  | { refused: 'no-room-here' }
  | { refused: 'room-used-already' }
  | { refused: 'room-not-used' }
  /** Only the operation file can change it. */
  | { refused: 'room-of-file' };

/** Taken down, but worth a second look. */
export type Warning =
  | { warning: 'not-multiple'; weight: 'first' | 'second' | 'net'; lb: Lb; divisionLb: Lb }
  | { warning: 'unusual'; weight: 'first' | 'second' | 'net'; lb: Lb; minLb: Lb; maxLb: Lb }
  | { warning: 'over-limit'; grossLb: Lb; limitLb: Lb }
  /** Roots above the station's limit. `stopped`: the dig is stopped there already. */
  | { warning: 'root-too-warm'; station: StationId; limitF: Fahrenheit; stopped: boolean }
  /** To foreman and grower, who decide: sucrose that such roots lose in a pile beyond roots at the limit, lb a ton and day. */
  | { warning: 'root-cost'; limitF: Fahrenheit; lbPerTonDay: number };
