/** Given these facts, when that person says this: what is written, refused and warned of. Times are wall clock at the sample farm. */
import { accept } from '../../src/core/accept/accept.ts';
import { foldHarvest } from '../../src/core/harvest/fold.ts';
import type { Correction, Fact, FactHeader, HaulStep, Happening, Ticket } from '../../src/core/book/facts.ts';
import type { Load } from '../../src/core/haul/load.ts';
import type { TruckState } from '../../src/core/haul/truck.ts';
import type { Intent, IntentTarget } from '../../src/core/intent.ts';
import type { PersonId, Roster, TruckId } from '../../src/core/roster.ts';
import type { EpochMs, Lb } from '../../src/core/units.ts';
import { zoneClock } from '../../src/run/host/zone-clock.ts';
import { sampleRoster } from './roster.ts';
import type { Harvest } from '../../src/core/harvest/harvest.ts';
import type { Refusal, Warning } from '../../src/core/refusal.ts';

type Spoken = Exclude<Intent, { do: 'ask' }>;

/** "10:15" on 2026-10-20; with a date, "2026-10-21 06:30", on that day. Seconds may follow. */
export const at = (clock: string): EpochMs => {
  const parts = clock.match(/\d+/g)?.map(Number) ?? [];
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = clock.includes('-')
    ? parts
    : [2026, 10, 20, ...parts];
  return zoneClock.instant('America/Boise', { year, month, day, hour, minute }) + second * 1000;
};

let messages = 0;

/** A fact as a message of its own brought it; the header's times are all the same unless told otherwise. */
export const fact = (happening: Happening, clock: string, header: Partial<FactHeader> = {}): Fact => {
  messages += 1;
  const cause = header.cause ?? `local:m${messages}`;
  const atMs = header.atMs ?? at(clock);
  const sentMs = header.sentMs ?? atMs;
  const heardMs = header.heardMs ?? sentMs;
  const by = header.by === undefined ? 'ana' : header.by;
  const id = header.id ?? `${cause}#0`;
  return { id, cause, atMs, sentMs, heardMs, by, timeStated: header.timeStated ?? false, ...happening };
};

export const step = (
  truck: TruckId,
  said: HaulStep,
  clock: string,
  more: Partial<Extract<Happening, { kind: 'truck-reported' }>> & { header?: Partial<FactHeader> } = {},
): Fact => {
  const { header, ...rest } = more;
  const silent = { field: null, station: null, grossLb: null, words: null };
  return fact({ kind: 'truck-reported', truck, step: said, ...silent, ...rest }, clock, header);
};

export const aTicket = (truck: TruckId, netLb: Lb, more: Partial<Ticket> = {}): Ticket => ({
  station: 'north-station',
  serial: null,
  truck,
  field: null,
  grossLb: null,
  tareLb: null,
  netLb,
  firstWeighedMs: null,
  ...more,
});

export const ticket = (
  truck: TruckId,
  clock: string,
  netLb: Lb,
  more: Partial<Ticket> & { header?: Partial<FactHeader> } = {},
): Fact => {
  const { header, ...rest } = more;
  return fact({ kind: 'ticket-booked', ticket: aTicket(truck, netLb, rest) }, clock, header);
};

export const report = (
  said: HaulStep,
  more: Partial<Extract<Intent, { do: 'report' }>> = {},
): Extract<Intent, { do: 'report' }> => ({
  do: 'report',
  step: said,
  truck: null,
  field: null,
  station: null,
  atMs: null,
  ahead: null,
  words: null,
  untilMs: null,
  ...more,
});

export const bookTicket = (
  more: Partial<Extract<Intent, { do: 'book-ticket' }>>,
): Extract<Intent, { do: 'book-ticket' }> => ({
  do: 'book-ticket',
  serial: null,
  truck: null,
  field: null,
  station: null,
  atMs: null,
  firstWeighedMs: null,
  grossLb: null,
  tareLb: null,
  netLb: null,
  ...more,
});

const latest: IntentTarget = { by: 'latest', truck: null };

export const undo = (target: IntentTarget = latest): Spoken => ({ do: 'withdraw', target });

export const correct = (set: Partial<Correction>, target: IntentTarget = latest): Spoken => ({
  do: 'correct',
  target,
  set: { truck: null, field: null, atMs: null, grossLb: null, tareLb: null, netLb: null, ...set },
});

export interface Given {
  harvest: Harvest;
  /** All facts so far. */
  facts: readonly Fact[];
  /** Of the last thing said. */
  added: readonly Fact[];
  refusal: Refusal | null;
  warnings: readonly Warning[];
  when: (
    intent: Spoken,
    by: PersonId,
    clock: string,
    header?: { heardMs?: EpochMs; cause?: string },
  ) => Given;
}

/** Where the crew talks. */
export const CREW_ROOM = { platform: 'local', room: 'crew' };

const after = (
  roster: Roster,
  facts: readonly Fact[],
  last: Pick<Given, 'added' | 'refusal' | 'warnings'>,
): Given => {
  const harvest = foldHarvest(roster, facts);
  return {
    harvest,
    facts,
    ...last,
    when: (intent, by, clock, header = {}) => {
      const speaker = harvest.roster.people.find((person) => person.id === by);
      if (!speaker) throw new Error(`${by} is not on the list`);
      messages += 1;
      const cause = header.cause ?? `local:m${messages}`;
      const sentMs = at(clock);
      const speaking = {
        speaker,
        cause,
        place: CREW_ROOM,
        sentMs,
        heardMs: header.heardMs ?? sentMs,
        factsSoFar: 0,
      };
      const accepted = accept(intent, harvest, speaking);
      return accepted.outcome === 'refused'
        ? after(roster, facts, { added: [], refusal: accepted.refusal, warnings: [] })
        : after(roster, [...facts, ...accepted.facts], {
            added: accepted.facts,
            refusal: null,
            warnings: accepted.warnings,
          });
    },
  };
};

export const given = (facts: readonly Fact[] = [], roster: Roster = sampleRoster): Given =>
  after(roster, facts, { added: [], refusal: null, warnings: [] });

/** The truck's state; fails where nothing was heard of it. */
export const truckIn = (harvest: Harvest, truck: TruckId): TruckState => {
  const state = harvest.trucks.get(truck);
  if (!state) throw new Error(`Nothing was heard of truck ${truck}`);
  return state;
};

export const loadsOf = (harvest: Harvest, truck: TruckId): readonly Load[] =>
  harvest.trucks.get(truck)?.loads ?? [];

/** All loads of all trucks. */
export const allLoads = (harvest: Harvest): Load[] =>
  [...harvest.trucks.values()].flatMap((state) => state.loads);
