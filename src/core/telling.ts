import type { Fact, NoticeStep } from './book/facts.ts';
import type { BoardRow } from './answers/board.ts';
import type { BookedTicket } from './haul/load.ts';
import type { Question, Unclear } from './intent.ts';
import type { FleetMatch, HoldAdvice } from './line/fleet.ts';
import type { WaitForecast } from './line/types.ts';
import type { DayPlan } from './answers/plan.ts';
import type { ListChange, PersonId, StationId, TruckId } from './roster.ts';
import type { LeftInField } from './answers/left.ts';
import type { Tally } from './answers/tally.ts';
import type { EpochMs, Minutes } from './units.ts';
import type { UnseenNotice, RainAround, DigState } from './notices/notices.ts';
import type { Refusal, Warning } from './refusal.ts';

/** Everything that the bot can say, as data; the words are made in `saying`. */
export type Telling =
  /** `asksCount`: the driver stands in the line and could count the trucks ahead. */
  | { tell: 'receipt'; facts: readonly Fact[]; warnings: readonly Warning[]; asksCount: boolean }
  | { tell: 'taken-back'; facts: readonly Fact[] }
  | { tell: 'corrected'; facts: readonly Fact[]; warnings: readonly Warning[] }
  | { tell: 'edit-unread'; facts: readonly Fact[] }
  | { tell: 'refusal'; refusal: Refusal }
  | { tell: 'question'; problem: Unclear; said: string }
  | {
      tell: 'wait';
      station: StationId;
      arriveInMin: Minutes;
      leaveInMin: Minutes | null;
      haulMin: Minutes | null;
      /** Whether the truck had better wait loaded at the field; null = not asked for a truck that is there. */
      hold: { truck: TruckId; advice: HoldAdvice } | null;
      forecast: WaitForecast;
    }
  | { tell: 'tally'; tally: Tally; asked: 'tons' | 'loads'; span: 'today' | 'yesterday' | 'season' }
  | { tell: 'left'; fields: readonly LeftInField[] }
  /** Stands in the place of a board that was asked for again. */
  | { tell: 'board-moved' }
  | { tell: 'board'; rows: readonly BoardRow[]; dayStartMs: EpochMs; dig: DigState }
  | { tell: 'truck'; row: BoardRow }
  | { tell: 'may-dig'; dig: DigState }
  | { tell: 'unseen'; notice: UnseenNotice }
  | { tell: 'tickets'; tickets: readonly BookedTicket[]; truck: TruckId | null; withoutTicket: number }
  | { tell: 'list'; list: Extract<Question, { about: 'lists' }>['list'] }
  | { tell: 'ticket-form'; truck: TruckId | null }
  | { tell: 'help'; manager: boolean }
  | { tell: 'seen'; step: NoticeStep }
  | { tell: 'list-changed'; change: ListChange }
  | { tell: 'language'; language: 'en' | 'es' }
  | {
      tell: 'notice';
      step: NoticeStep;
      by: PersonId | null;
      changed: NoticeStep | null;
      rain: RainAround | null;
      /** A phone rings. */
      rings: boolean;
    }
  /** To one who has not confirmed it. */
  | { tell: 'reminder'; step: NoticeStep }
  | { tell: 'emergency-answer' }
  | {
      tell: 'emergency';
      name: string;
      words: string;
      truck: TruckId | null;
      atMs: EpochMs;
    }
  | { tell: 'stranger-answer' }
  | { tell: 'stranger'; name: string; platform: string; user: string }
  | { tell: 'truck-down'; truck: TruckId; words: string | null; by: PersonId | null; atMs: EpochMs }
  /** The plan of today (0) or tomorrow (1) at that station. */
  | { tell: 'outlook'; station: StationId; addDays: 0 | 1; plan: DayPlan }
  /** The weather service refuses, so that nothing will be told of heat and frost there. */
  | { tell: 'no-forecast'; station: StationId; why: string }
  | {
      tell: 'line-limit';
      station: StationId;
      limitMin: Minutes;
      forecast: Extract<WaitForecast, { known: true }>;
    }
  | { tell: 'line-stopped'; station: StationId; waiting: readonly TruckId[]; silentMin: Minutes }
  | { tell: 'fleet'; fleet: FleetMatch }
  | { tell: 'trouble'; reference: string };

/** Who is told. `asker` = where the message came from. */
export type Audience = { to: 'asker' } | { to: 'person'; person: PersonId } | { to: 'room'; room: string };

export interface Tell {
  audience: Audience;
  telling: Telling;
  /** Goes ahead of everything else, and a phone rings. */
  urgent: boolean;
  /** Part of the outbox key: the same tell to the same audience goes out once. */
  key: string;
}
