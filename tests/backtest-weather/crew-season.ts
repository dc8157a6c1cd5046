/** Sixty days of a crew with the bot, told to the harvest as the live bot would: who hears what, how often, and for what. */
import { nextOutlookMs, outlookTells } from '../../src/core/answers/outlooks.ts';
import type { Fact, Happening } from '../../src/core/book/facts.ts';
import { foldHarvest, withFacts } from '../../src/core/harvest/fold.ts';
import type { Harvest } from '../../src/core/harvest/harvest.ts';
import { hasUnseen } from '../../src/core/notices/notices.ts';
import { tellsOf, timePasses } from '../../src/core/notices/tells.ts';
import type { Roster } from '../../src/core/roster.ts';
import type { Tell } from '../../src/core/telling.ts';
import { zoneClock } from '../../src/run/host/zone-clock.ts';
import { sampleRoster } from '../support/roster.ts';
import type { HarvestDay, Issue } from './season.ts';

const MINUTE_MS = 60_000;
const PLACE = 'north-station';
/** The days of the data are told by UTC. */
const ZONE = 'UTC';

export const seasonRoster: Roster = {
  ...sampleRoster,
  zone: ZONE,
  stations: sampleRoster.stations.map((station) => ({ ...station, zone: ZONE })),
  fields: sampleRoster.fields.map((field) => ({ ...field, zone: ZONE })),
  outlookTo: 'managers',
};

/** Hours of wall time in which the crew works: somebody reports every hour. */
const WORK = { from: 5, to: 20 };
/** Of ten people so many confirm within five minutes, so many more within a quarter of an hour; the rest forget. Grade: chosen. */
const CONFIRMS = { soon: 7, late: 2 };

export interface Sent {
  atMs: number;
  to: string;
  tell: Tell;
}

export interface CrewSeason {
  sent: readonly Sent[];
  harvest: Harvest;
}

interface Run {
  harvest: Harvest;
  sent: Sent[];
  keys: Set<string>;
  wakeAtMs: number | null;
  facts: number;
}

const nameOf = ({ audience }: Tell): string =>
  audience.to === 'room' ? 'room' : audience.to === 'person' ? audience.person : 'asker';

/** The same tell to the same audience goes out once, as the outbox has it. */
const send = (run: Run, tells: readonly Tell[], atMs: number): void => {
  for (const tell of tells) {
    const key = `${tell.key}:${nameOf(tell)}`;
    if (run.keys.has(key)) continue;
    run.keys.add(key);
    run.sent.push({ atMs, to: nameOf(tell), tell });
  }
};

const look = (run: Run, nowMs: number): void => {
  const { facts, tells } = timePasses(run.harvest, zoneClock, nowMs);
  run.harvest = withFacts(run.harvest, facts);
  send(run, [...facts.flatMap((fact) => tellsOf(fact, run.harvest, zoneClock)), ...tells], nowMs);
  run.wakeAtMs = timePasses(run.harvest, zoneClock, nowMs).wakeAtMs;
};

const heard = (run: Run, happening: Happening, atMs: number, by: string | null): void => {
  run.facts += 1;
  const cause = `season:${run.facts}`;
  const fact: Fact = {
    id: `${cause}#0`,
    cause,
    atMs,
    sentMs: atMs,
    heardMs: atMs,
    by,
    timeStated: false,
    ...happening,
  };
  run.harvest = withFacts(run.harvest, [fact]);
  send(run, tellsOf(fact, run.harvest, zoneClock), atMs);
};

type Event = { atMs: number; happens: (run: Run) => void };

const forecasts = (issues: readonly Issue[]): Event[] =>
  issues.map(({ issuedMs, hours }) => ({
    atMs: issuedMs + 20 * MINUTE_MS,
    happens: (run) => {
      heard(
        run,
        { kind: 'forecast-issued', place: PLACE, issuedMs, hours, rain: [], freezeAlerts: [] },
        issuedMs + 20 * MINUTE_MS,
        null,
      );
    },
  }));

/** The air is measured every hour, and somebody of the crew reports in the hours of work. */
const hourly = (days: readonly HarvestDay[]): Event[] =>
  days.flatMap(({ actual }) =>
    actual.slice(0, 24).flatMap(({ startMs, temperatureF }, hour): Event[] => [
      {
        atMs: startMs,
        happens: (run) => {
          heard(run, { kind: 'air-observed', place: PLACE, temperatureF }, startMs, null);
        },
      },
      ...(hour < WORK.from || hour >= WORK.to
        ? []
        : [
            {
              atMs: startMs,
              happens: (run: Run) => {
                heard(run, { kind: 'field-dug', field: 'north-40' }, startMs, 'fritz');
              },
            },
          ]),
    ]),
  );

/** Whoever has something to confirm does so, if he is one of those who do by then. */
const confirmations = (days: readonly HarvestDay[], random: () => number): Event[] =>
  days.flatMap(({ midnightMs }) => {
    const luck = new Map(seasonRoster.people.map(({ id }) => [id, Math.floor(random() * 10)]));
    return Array.from({ length: (24 * 60) / 5 }, (_, at): Event => {
      const atMs = midnightMs + at * 5 * MINUTE_MS;
      return {
        atMs,
        happens: (run) => {
          for (const { id } of seasonRoster.people) {
            const first = run.sent.findLast(
              ({ to, tell }) => to === id && tell.telling.tell === 'notice' && tell.telling.order,
            );
            const waitedMin = first === undefined ? 0 : (atMs - first.atMs) / MINUTE_MS;
            const needsMin =
              (luck.get(id) ?? 0) < CONFIRMS.soon
                ? 5
                : (luck.get(id) ?? 0) < CONFIRMS.soon + CONFIRMS.late
                  ? 15
                  : Infinity;
            if (first !== undefined && waitedMin >= needsMin && waitedMin < 60 && hasUnseen(run.harvest, id))
              heard(run, { kind: 'notice-seen', person: id }, atMs, id);
          }
        },
      };
    });
  });

export const crewSeason = (
  days: readonly HarvestDay[],
  issues: readonly Issue[],
  random: () => number,
): CrewSeason => {
  const run: Run = {
    harvest: foldHarvest(seasonRoster, []),
    sent: [],
    keys: new Set(),
    wakeAtMs: null,
    facts: 0,
  };
  const events = [...forecasts(issues), ...hourly(days), ...confirmations(days, random)].sort(
    (a, b) => a.atMs - b.atMs,
  );
  let outlookMs: number | null = null;
  for (const { atMs, happens } of events) {
    while (run.wakeAtMs !== null && run.wakeAtMs < atMs) look(run, run.wakeAtMs);
    if (outlookMs !== null && outlookMs <= atMs) {
      send(run, outlookTells(run.harvest, zoneClock, outlookMs), outlookMs);
      outlookMs = null;
    }
    const before = run.facts;
    happens(run);
    outlookMs ??= nextOutlookMs(run.harvest, zoneClock, atMs);
    if (run.facts > before) look(run, atMs);
  }
  return { sent: run.sent, harvest: run.harvest };
};
