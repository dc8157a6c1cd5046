import type { Correction, EntryTarget, FieldMachine, HaulStep, HoldReason } from './book/terms.ts';
import type { FieldId, Language, ListChange, PersonId, StationId, TruckId } from './roster.ts';
import type { EpochMs, Fahrenheit, Lb } from './units.ts';

/**
 * Everything a person can mean. The reader has already turned names into ids and clock words into instants; what was
 * not said is null, and `accept` fills it in (own truck, the message's time, the load's field).
 */
export type Intent =
  | {
      do: 'report';
      step: HaulStep;
      truck: TruckId | null;
      field: FieldId | null;
      station: StationId | null;
      atMs: EpochMs | null;
      /** Trucks ahead, as counted by the driver who stands there. */
      ahead: number | null;
      /** Why the truck is down, in the sender's words. */
      words: string | null;
      /** Until when it is parked or down. */
      untilMs: EpochMs | null;
    }
  | {
      do: 'book-ticket';
      serial: string | null;
      truck: TruckId | null;
      field: FieldId | null;
      station: StationId | null;
      atMs: EpochMs | null;
      firstWeighedMs: EpochMs | null;
      grossLb: Lb | null;
      tareLb: Lb | null;
      netLb: Lb | null;
    }
  | { do: 'see-line'; station: StationId | null; ahead: number; atMs: EpochMs | null }
  | {
      do: 'see-pilers';
      station: StationId | null;
      open: number | null;
      down: number | 'all' | null;
      atMs: EpochMs | null;
    }
  | {
      do: 'report-station';
      station: StationId | null;
      open: boolean;
      untilMs: EpochMs | null;
      atMs: EpochMs | null;
    }
  /** The station refuses loads. `truck` null = the sender's own, if it is on its way there. */
  | {
      do: 'report-turned-away';
      station: StationId | null;
      truck: TruckId | null;
      words: string | null;
      atMs: EpochMs | null;
    }
  | {
      do: 'measure-root';
      field: FieldId | null;
      station: StationId | null;
      temperatureF: Fahrenheit;
      atMs: EpochMs | null;
    }
  | { do: 'check-crown'; field: FieldId | null; sound: boolean; atMs: EpochMs | null }
  | { do: 'dig-field'; field: FieldId; atMs: EpochMs | null }
  /** Acres dug or topped so far; `field` null = of the field that is dug. */
  | {
      do: 'report-acres';
      machine: FieldMachine;
      field: FieldId | null;
      acres: number;
      atMs: EpochMs | null;
    }
  | {
      do: 'report-machine';
      machine: FieldMachine;
      /** It works again; false = it stands. */
      runs: boolean;
      atMs: EpochMs | null;
      untilMs: EpochMs | null;
      words: string | null;
    }
  | { do: 'take-truck'; person: PersonId | null; truck: TruckId }
  | { do: 'withdraw'; target: IntentTarget }
  | { do: 'correct'; target: IntentTarget; set: Correction }
  | { do: 'acknowledge' }
  /** `untilMs`: when the dig is to go on, where that was said. */
  | {
      do: 'order-stop';
      hold: HoldReason;
      stopAtMs: EpochMs | null;
      untilMs?: EpochMs;
      words: string | null;
    }
  /** `words`: why, where it is said: "dig on: station agreed". */
  | { do: 'order-resume'; atMs: EpochMs | null; words: string | null }
  /** Words for others, as they were written. `soundsLikeOrder`: they read as an order to stop or to dig again. */
  | {
      do: 'pass-on';
      to: readonly PersonId[] | 'everybody';
      words: string;
      soundsLikeOrder: boolean;
    }
  | { do: 'drill'; ends: boolean }
  /** On or off shift, and whether notices should come when off; null = not said. */
  | { do: 'tell-shift'; off: boolean | null; noticesWhenOff: boolean | null; atMs?: EpochMs | null }
  | { do: 'change-list'; change: ListChangeAsk }
  /** The room that it is said in is, or is no longer, a room of the crew. */
  | { do: 'use-room'; use: boolean }
  /** From now on `said` means what `means` does; null = nothing any more. Both folded, without marks. */
  | { do: 'teach'; said: string; means: string | null }
  | { do: 'choose-language'; language: Language }
  | { do: 'call-emergency'; words: string }
  /** Which reading of an earlier message was meant: `offer` null = the newest; `which` 1, 2, 3, or 0 = none of them. */
  | { do: 'choose'; offer: number | null; which: number }
  | { do: 'ask'; question: Question };

/** As an EntryTarget, but the sender is not yet filled in. */
export type IntentTarget = Exclude<EntryTarget, { by: 'latest' }> | { by: 'latest'; truck: TruckId | null };

/** The calendar day, the day before, the week since its Monday, the whole book. */
export type SpanName = 'today' | 'yesterday' | 'week' | 'season';

export type Question =
  /** `leaveInMin` null = the line now; 0 = "if I leave now"; 45 = "if I leave in 45 minutes". */
  | { about: 'line'; station: StationId | null; leaveInMin: number | null }
  | { about: 'tons'; field: FieldId | null; truck: TruckId | null; span: SpanName }
  | { about: 'loads'; field: FieldId | null; truck: TruckId | null; span: SpanName }
  /** How many trucks keep the digger going. */
  | { about: 'fleet' }
  /** Tons, acres and loads still in the ground. */
  | { about: 'left'; field: FieldId | null }
  | { about: 'board' }
  /** Where one truck is. */
  | { about: 'truck'; truck: TruckId | null }
  /** At which field the digger is: where an empty truck goes. */
  | { about: 'where-to' }
  | { about: 'may-dig' }
  | { about: 'unseen-notice' }
  /** The plan by the forecast. Null = of today in the morning, of tomorrow from noon on. */
  | { about: 'outlook'; station: StationId | null; of: 'today' | 'tomorrow' | null }
  | { about: 'tickets'; truck: TruckId | null }
  | { about: 'lists'; list: 'people' | 'trucks' | 'fields' | 'stations' | 'limits' }
  /** How a ticket is typed. */
  | { about: 'ticket-form' }
  | { about: 'help' };

/** A change of the lists in the words of chat, before it is merged with the entry as it stands. */
export type ListChangeAsk =
  | {
      list: 'people';
      put: {
        name: string;
        role: 'grower' | 'foreman' | 'driver' | 'digger-operator' | 'topper-operator' | null;
        truck: TruckId | null;
        language: Language | null;
        address: string | null;
      };
    }
  | {
      list: 'trucks';
      put: { id: TruckId; grossLimitLb: Lb | null; usualTareLb: { min: Lb; max: Lb } | null };
    }
  | { list: 'fields'; put: { name: string; acres: number | null; station: StationId | null } }
  | { list: 'stations'; put: { name: string; airLimitF: Fahrenheit | null } }
  | { list: 'limits'; put: { lineLimitMin: number | null } }
  | Exclude<Extract<ListChange, { remove: string }>, { list: 'rooms' }>;

/** What the reader made of a message. */
export type Reading =
  | { found: 'intents'; intents: readonly Intent[] }
  /** One of these, the likeliest first; at most three, none empty. The sender says which. */
  | { found: 'likely'; readings: readonly (readonly Intent[])[] }
  /** Meant for the bot, but not understood, or ambiguous: one short question goes back. */
  | { found: 'unclear'; problem: Unclear }
  /** Not meant for the bot: no answer at all. */
  | { found: 'chatter' };

export type Unclear =
  | { problem: 'not-understood' }
  /** A number or name that fits nothing on the lists, with what it might be. */
  | {
      problem: 'unknown-name';
      sort: 'truck' | 'field' | 'station' | 'person';
      said: string;
      known: readonly string[];
    }
  | { problem: 'which-time'; said: string }
  | { problem: 'which-amount'; said: string }
  /** `word`: it means something already, or is no word. `meaning`: it is no report, question or shift. */
  | { problem: 'cannot-teach'; why: 'word' | 'meaning'; said: string }
  /** "Last month": a span for which such a list or sum cannot be given. */
  | { problem: 'which-span'; of: 'sums' | 'tickets'; said: string };
