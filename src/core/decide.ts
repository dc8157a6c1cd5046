/** What follows from new facts, and from time passing: notices to be raised, and who must be told what. */
import type { Day, NoticeEvent } from './day.ts';
import type { Fact, FactOf } from './facts.ts';
import { newestStep } from './notices.ts';
import { fieldById, managers, mayManage, personById } from './roster.ts';
import type { Roster, Station } from './roster.ts';
import type { Audience, Tell, Telling } from './telling.ts';
import type { EpochMs } from './units.ts';
import { forecastPairs } from './weather/forecast-pairs.ts';
import { HEAT_OPTIONS, heatStop } from './weather/heat-stop.ts';
import type { HeatOptions } from './weather/heat-stop.ts';
import type { ZoneClock } from './zone-clock.ts';

const everyone = (roster: Roster): Audience[] => [
  ...roster.rooms.map((room): Audience => ({ to: 'room', room: room.id })),
  ...roster.people.map((person): Audience => ({ to: 'person', person: person.id })),
];

export const managersOf = (roster: Roster): Audience[] =>
  managers(roster).map((person): Audience => ({ to: 'person', person: person.id }));

const tellAll = (audiences: readonly Audience[], telling: Telling, key: string, urgent: boolean): Tell[] =>
  audiences.map((audience) => ({ audience, telling, urgent, key }));

const noticeTells = (fact: FactOf<'notice-raised'>, day: Day): Tell[] => {
  const event = day.notices.find((known) => known.event === fact.step.event);
  const changed = event?.steps.findLast(({ step }) => step.number < fact.step.number)?.step ?? null;
  const telling: Telling = { tell: 'notice', step: fact.step, by: fact.by, changed };
  return tellAll(everyone(day.roster), telling, `notice:${fact.step.event}:${fact.step.number}`, true);
};

const emergencyTells = (fact: FactOf<'emergency-called'>, day: Day): Tell[] => {
  const person = fact.by === null ? undefined : personById(day.roster, fact.by);
  const telling: Telling = {
    tell: 'emergency',
    name: fact.caller,
    words: fact.words,
    truck: person?.truck ?? null,
    atMs: fact.atMs,
  };
  return tellAll(managersOf(day.roster), telling, `emergency:${fact.id}`, true);
};

const downTells = (fact: FactOf<'truck-reported'>, day: Day): Tell[] => {
  if (fact.step !== 'down') return [];
  const { truck, words, by, atMs } = fact;
  const others = managersOf(day.roster).filter(
    (audience) => audience.to !== 'person' || audience.person !== by,
  );
  return tellAll(others, { tell: 'truck-down', truck, words, by, atMs }, `down:${fact.id}`, false);
};

const lineTelling = ({ station, warning }: FactOf<'line-warned'>): Telling | null => {
  switch (warning.about) {
    case 'limit':
      return warning.above ? { tell: 'line-limit', station, ...warning } : null;
    case 'stopped':
      return { tell: 'line-stopped', station, ...warning };
  }
};

const lineTells = (fact: FactOf<'line-warned'>, day: Day): Tell[] => {
  const telling = lineTelling(fact);
  return telling === null ? [] : tellAll(managersOf(day.roster), telling, fact.id, false);
};

/** Whom a new fact concerns, besides the one who said it. */
export const tellsOf = (fact: Fact, day: Day): Tell[] => {
  switch (fact.kind) {
    case 'notice-raised':
      return noticeTells(fact, day);
    case 'emergency-called':
      return emergencyTells(fact, day);
    case 'truck-reported':
      return downTells(fact, day);
    case 'line-warned':
      return lineTells(fact, day);
    case 'stranger-heard': {
      const { platform, user } = fact;
      return tellAll(
        managersOf(day.roster),
        { tell: 'stranger', name: user, platform, user },
        `stranger:${fact.id}`,
        false,
      );
    }
    case 'ticket-booked':
    case 'line-seen':
    case 'pilers-seen':
    case 'station-reported':
    case 'root-measured':
    case 'crown-checked':
    case 'field-dug':
    case 'truck-taken':
    case 'entry-withdrawn':
    case 'entry-corrected':
    case 'forecast-issued':
    case 'air-observed':
    case 'notice-seen':
    case 'language-chosen':
    case 'list-changed':
      return [];
  }
};

const heatEventOf = (day: Day, station: Station): NoticeEvent | undefined =>
  day.notices.findLast((event) => {
    const { notice, place } = newestStep(event).step;
    return notice === 'heat' && (place === station.id || place === null);
  });

/** "Station open" ends a stop, so it counts from foreman and grower alone; that it is closed may be told by anybody. */
const mayEndStop = ({ open, by }: FactOf<'station-reported'>, day: Day): boolean => {
  const person = by === null ? undefined : personById(day.roster, by);
  return !open || (person !== undefined && mayManage(person));
};

/** What the station said of itself, and roots that were measured there or in a field that hauls to it. */
const wordsFor = (day: Day, station: Station): Pick<HeatOptions, 'rootReadings' | 'stationWord'> => {
  const ofStation = (reading: FactOf<'root-measured'>): boolean =>
    reading.station === station.id ||
    (reading.field !== null && fieldById(day.roster, reading.field)?.station === station.id);
  return {
    rootReadings: day.rootReadings.filter(ofStation),
    stationWord:
      day.stationReports.findLast((report) => report.station === station.id && mayEndStop(report, day)) ??
      null,
  };
};

const stationStep = (
  day: Day,
  station: Station,
  clock: ZoneClock,
  nowMs: EpochMs,
): { fact: Fact | null; wakeAtMs: EpochMs | null } => {
  const forecasts = day.forecasts.get(station.id)?.filter((f) => f.issuedMs <= nowMs) ?? [];
  const forecast = forecasts.at(-1);
  if (!forecast) return { fact: null, wakeAtMs: null };
  const event = heatEventOf(day, station);
  const newest = event ? newestStep(event) : null;
  const options: HeatOptions = {
    ...HEAT_OPTIONS,
    ...wordsFor(day, station),
    lastStepMs: newest?.atMs ?? null,
    earlier: forecasts.slice(0, -1),
    pairs: forecastPairs(day.facts, station, clock),
  };
  const eventId = `heat-${station.id}-${nowMs}`;
  const { step, wakeAtMs } = heatStop(
    newest?.step ?? null,
    forecast,
    station,
    clock,
    nowMs,
    eventId,
    options,
  );
  if (!step) return { fact: null, wakeAtMs };
  const cause = `notice:${step.event}:${step.number}`;
  const times = { atMs: nowMs, sentMs: nowMs, heardMs: nowMs };
  return {
    fact: { id: `${cause}#0`, cause, ...times, by: null, timeStated: false, kind: 'notice-raised', step },
    wakeAtMs,
  };
};

/** Notices that the weather asks for now, and when to look again if nothing new is heard; null = no need. */
export const watchWeather = (
  day: Day,
  clock: ZoneClock,
  nowMs: EpochMs,
): { facts: Fact[]; wakeAtMs: EpochMs | null } => {
  const steps = day.roster.stations.map((station) => stationStep(day, station, clock, nowMs));
  const wakes = steps.flatMap((step) =>
    step.wakeAtMs === null || step.wakeAtMs <= nowMs ? [] : [step.wakeAtMs],
  );
  return {
    facts: steps.flatMap((step) => (step.fact ? [step.fact] : [])),
    wakeAtMs: wakes.length > 0 ? Math.min(...wakes) : null,
  };
};
