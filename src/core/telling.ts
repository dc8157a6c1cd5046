import type { Fact, FactOf, FieldMachine, MissingForecast, NoticeStep } from './book/facts.ts';
import type { BoardRow } from './answers/board.ts';
import type { BookedTicket } from './haul/load.ts';
import type { Question, SpanName, Unclear } from './intent.ts';
import type { FleetMatch, HoldAdvice } from './line/fleet.ts';
import type { WaitForecast } from './line/types.ts';
import type { DayPlan } from './answers/plan.ts';
import type { FieldId, Language, ListChange, PersonId, StationId, TruckId } from './roster.ts';
import type { LeftInField } from './answers/left.ts';
import type { Tally } from './answers/tally.ts';
import type { EpochMs, Minutes } from './units.ts';
import type { UnseenNotice, RainAround, DigState } from './notices/notices.ts';
import type { StationFact, StationTrouble } from './notices/station-now.ts';
import type { Refusal, Warning } from './refusal.ts';

/**
 * Everything that the bot can say, as data. Words, buttons and the rest of each are in `saying/tellings/`, in the file
 * that has its name.
 */
export type Telling =
  /** What was taken down. `asksCount`: the driver is in the scale line and could count the trucks ahead. */
  | { tell: 'receipt'; facts: readonly Fact[]; warnings: readonly Warning[]; asksCount: boolean }
  /** An undo. */
  | { tell: 'taken-back'; facts: readonly Fact[] }
  | { tell: 'corrected'; facts: readonly Fact[]; warnings: readonly Warning[] }
  /** The edit of a message could not be read, so what the message said first stays. */
  | { tell: 'edit-unread'; facts: readonly Fact[] }
  | { tell: 'refusal'; refusal: Refusal }
  /** What `said` was not understood, and how to say it. */
  | { tell: 'question'; problem: Unclear; said: string }
  /** What the message `said` may mean, the likeliest first: which of these? `danger`: somebody may be hurt. */
  | {
      tell: 'offer';
      number: number;
      said: string;
      readings: readonly OfferedReading[];
      danger: boolean;
    }
  /** None of the readings was meant: nothing was taken down. */
  | { tell: 'nothing-taken' }
  /** How long a truck waits in the scale line. `leaveInMin` and `haulMin` null = asked for a truck that joins now. */
  | {
      tell: 'wait';
      station: StationId;
      arriveInMin: Minutes;
      leaveInMin: Minutes | null;
      haulMin: Minutes | null;
      /** Whether the truck should wait loaded at the field; null = not asked for a truck that is there. */
      hold: { truck: TruckId; advice: HoldAdvice } | null;
      /** What keeps a truck waiting that gets there then; null = nothing that is known. */
      trouble: StationTrouble | null;
      forecast: WaitForecast;
    }
  /** Tons or loads. */
  | { tell: 'tally'; tally: Tally; asked: 'tons' | 'loads'; span: SpanName }
  /** What is still in the ground. */
  | { tell: 'left'; fields: readonly LeftInField[] }
  /** Replaces a board that was asked for again. */
  | { tell: 'board-moved' }
  /** Where all trucks are. */
  | { tell: 'board'; rows: readonly BoardRow[]; dayStartMs: EpochMs; dig: DigState }
  /** Where one truck is. */
  | { tell: 'truck'; row: BoardRow }
  | { tell: 'may-dig'; dig: DigState }
  /** The field that is dug, by the crew's last word; null = nobody has said. With the station of its loads. */
  | { tell: 'where-to'; field: FieldId | null; station: StationId | null; dig: DigState }
  /** Who has not confirmed the newest notice; `undelivered`: whom it has not reached by any address. */
  | { tell: 'unseen'; notice: UnseenNotice; undelivered: readonly PersonId[] }
  /** Tickets of today; `truck` null = of all trucks. */
  | { tell: 'tickets'; tickets: readonly BookedTicket[]; truck: TruckId | null; withoutTicket: number }
  /** One of the lists of the operation. */
  | { tell: 'list'; list: Extract<Question, { about: 'lists' }>['list'] }
  /** How to type a ticket, where the chat has no form for it. */
  | { tell: 'ticket-form'; truck: TruckId | null }
  /** `manager`: with what only grower and foreman can say. */
  | { tell: 'help'; manager: boolean }
  /** Thanks for a confirmation. */
  | { tell: 'seen'; step: NoticeStep }
  | { tell: 'list-changed'; change: ListChange }
  /** The language was changed. */
  | { tell: 'language'; language: Language }
  /** A step of a stop or a drill, to the crew. `changed`: the step before it; null = it is the first. */
  | {
      tell: 'notice';
      step: NoticeStep;
      by: PersonId | null;
      changed: NoticeStep | null;
      rain: RainAround | null;
      /** With an all-clear: the other stops that hold, or are told for later. */
      still: readonly NoticeStep[];
      /** It is to be carried out and confirmed; false = advice, a watch or an end. */
      order: boolean;
      /** The number of the step that must be confirmed; a later time keeps what was confirmed. */
      asked: number;
      /** Who has confirmed the order so far, and who must still; null = nobody has but who gave it. */
      confirmed: Omit<UnseenNotice, 'step'> | null;
      /** A phone rings. */
      rings: boolean;
    }
  /** Words that foreman or grower had passed on, to those who are to hear them. They order nothing. */
  | { tell: 'passed-words'; fact: FactOf<'words-passed'>; rings: boolean }
  /** To who had them passed on. */
  | { tell: 'words-passed'; fact: FactOf<'words-passed'> }
  /** Thanks for a confirmation of such words. */
  | { tell: 'words-seen' }
  /** Who has not confirmed them. */
  | {
      tell: 'words-unseen';
      words: string;
      seen: readonly PersonId[];
      unseen: readonly PersonId[];
    }
  /** To a person who has not confirmed the notice. */
  | { tell: 'reminder'; step: NoticeStep }
  /** To grower and foreman: a stop, or its end, has not reached a place. `why` null = the person has no address. */
  | {
      tell: 'undelivered';
      step: NoticeStep;
      to: { room: string } | { person: PersonId };
      why: string | null;
      /** A phone rings. */
      rings: boolean;
    }
  /** To the person who called for help. */
  | { tell: 'emergency-answer' }
  /** To grower and foreman. */
  | {
      tell: 'emergency';
      name: string;
      words: string;
      truck: TruckId | null;
      atMs: EpochMs;
    }
  /** To grower and foreman: somebody may be in danger, and the sender has not said whether. */
  | { tell: 'danger-unclear'; name: string; words: string; truck: TruckId | null; atMs: EpochMs }
  /** To a person who is not on the list. */
  | { tell: 'stranger-answer' }
  /** To grower and foreman: somebody who is not on the list wrote. */
  | { tell: 'stranger'; name: string; platform: string; user: string }
  /** To grower and foreman. */
  | { tell: 'truck-down'; truck: TruckId; words: string | null; by: PersonId | null; atMs: EpochMs }
  /** To grower and foreman: the digger or topper stands, or works again. */
  | {
      tell: 'machine';
      machine: FieldMachine;
      runs: boolean;
      untilMs: EpochMs | null;
      words: string | null;
      by: PersonId | null;
      atMs: EpochMs;
    }
  /** The plan of today (0) or tomorrow (1) at that station. */
  | { tell: 'outlook'; station: StationId; addDays: 0 | 1; plan: DayPlan }
  /** To grower and foreman: no forecasts come, so there will be no heat and frost notices for that station. */
  | { tell: 'no-forecast'; station: StationId; missing: MissingForecast }
  /** To grower and foreman: no forecast will give the all-clear that was promised. */
  | { tell: 'decide'; step: NoticeStep; forecastMs: EpochMs | null }
  /** To grower and foreman: they come again. */
  | { tell: 'forecast-back'; station: StationId }
  /** The wait has passed the limit that grower or foreman set. */
  | {
      tell: 'line-limit';
      station: StationId;
      limitMin: Minutes;
      forecast: Extract<WaitForecast, { known: true }>;
    }
  /** To grower and foreman, and to the trucks that go there. `pilers`: those that run, of all that there are. */
  | { tell: 'station-news'; fact: StationFact; pilers: { running: number; of: number } }
  /** None of our waiting trucks has weighed in for `silentMin`. */
  | { tell: 'line-stopped'; station: StationId; waiting: readonly TruckId[]; silentMin: Minutes }
  /** How many trucks keep the digger going. */
  | { tell: 'fleet'; fleet: FleetMatch; trouble: StationTrouble | null }
  /** The bot itself failed; `reference` finds the message in its log. */
  | { tell: 'trouble'; reference: string };

/** What would be taken down, and answered, if that reading is meant. */
export interface OfferedReading {
  facts: readonly Fact[];
  /** What an undo among them would take back, or a correction would come to. */
  changed: readonly Fact[];
  asks: readonly Question[];
}

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
