/** What the weather requires at each station: heat stop, frost hold, and when to look again. */
import type { Fact, FactOf, HoldReason, NoticeStep } from '../book/facts.ts';
import { forecastsBy, heatBasis, freezeAlerts } from '../weather/heat-basis.ts';
import { FROST_ANNOUNCED } from './assumptions.ts';
import { newestStep, raisedByBot } from './notices.ts';
import type { RaisedStep } from './notices.ts';
import { awakeMs } from './quiet.ts';
import { fieldById, mayManage, personById } from '../roster.ts';
import type { FieldId, PersonId, Station } from '../roster.ts';
import type { EpochMs } from '../units.ts';
import { FROST_OPTIONS, frostHold } from '../weather/frost.ts';
import { HEAT_OPTIONS, heatStop } from '../weather/heat-stop.ts';
import type { HeatOptions } from '../weather/heat-stop.ts';
import type { IssuedForecast } from '../weather/types.ts';
import { wallTimeOfDayMs } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import type { NoticeEvent, Harvest } from '../harvest/harvest.ts';

/** One station at one moment. */
interface WeatherLook {
  harvest: Harvest;
  station: Station;
  clock: ZoneClock;
  nowMs: EpochMs;
  /** Forecasts issued by now, oldest first. */
  forecasts: readonly FactOf<'forecast-issued'>[];
}

interface LookResult {
  fact: Fact | null;
  wakeAtMs: EpochMs | null;
}

const newestOf = ({ harvest, station }: WeatherLook, reason: HoldReason): RaisedStep | null => {
  const isOurs = (event: NoticeEvent): boolean => {
    const { notice, place } = newestStep(event).step;
    return notice === reason && (place === station.id || place === null);
  };
  const event = harvest.notices.findLast(isOurs);
  return event ? newestStep(event) : null;
};

const isManager = (harvest: Harvest, id: PersonId | null): boolean => {
  const person = id === null ? undefined : personById(harvest.roster, id);
  return person !== undefined && mayManage(person);
};

const isOfStation = ({ harvest, station }: WeatherLook, field: FieldId | null): boolean =>
  field !== null && fieldById(harvest.roster, field)?.station === station.id;

/** "Station open" ends a stop, so it counts only from foreman and grower; anybody may report that it is closed. */
const stationWord = ({ harvest, station }: WeatherLook): FactOf<'station-reported'> | null =>
  harvest.stationReports.findLast(
    (report) => report.station === station.id && (!report.open || isManager(harvest, report.by)),
  ) ?? null;

/** The step as a fact. `by`: the person whose word ended the event. */
const resultOf = (
  step: NoticeStep | null,
  by: PersonId | null,
  wakeAtMs: EpochMs | null,
  look: WeatherLook,
): LookResult => ({
  fact: step && raisedByBot(step, by, look.nowMs),
  wakeAtMs,
});

const NO_FORECAST: IssuedForecast = { issuedMs: -Infinity, hours: [] };

/** A warm afternoon is announced in the morning, not at night; a crew that digs at night hears of it at once. */
const heatLook = (look: WeatherLook): LookResult => {
  const { harvest, station, clock, nowMs, forecasts } = look;
  // Without a forecast measured roots still count.
  const forecast = forecasts.at(-1) ?? NO_FORECAST;
  const newest = newestOf(look, 'heat');
  const word = stationWord(look);
  const options: HeatOptions = {
    ...HEAT_OPTIONS,
    ...heatBasis(harvest, station, clock, nowMs),
    lastStepMs: newest?.atMs ?? null,
    rootReadings: harvest.rootReadings.filter(
      (reading) => reading.station === station.id || isOfStation(look, reading.field),
    ),
    stationWord: word,
  };
  const eventId = `heat-${station.id}-${nowMs}`;
  const current = newest?.step ?? null;
  const { step, wakeAtMs } = heatStop(current, forecast, station, clock, nowMs, eventId, options);
  const announcedMs = awakeMs(harvest, clock, nowMs);
  if (step?.number === 1 && announcedMs > nowMs) return { fact: null, wakeAtMs: announcedMs };
  const isByWord = step?.stage === 'all-clear' && step.source === 'person';
  return resultOf(step, isByWord ? (word?.by ?? null) : null, wakeAtMs, look);
};

/** When to announce the step; null = now. */
const frostAnnouncedMs = ({ clock, station, nowMs }: WeatherLook, step: NoticeStep): EpochMs | null => {
  const wall = (hour: number): EpochMs => wallTimeOfDayMs(clock, station.zone, nowMs, hour, 0);
  const isToday = (step.stopToppingMs ?? nowMs) < wall(FROST_ANNOUNCED.byHour);
  return step.number > 1 || isToday || nowMs >= wall(FROST_ANNOUNCED.fromHour)
    ? null
    : wall(FROST_ANNOUNCED.fromHour);
};

/** Anybody may report frozen crowns; sound ones count only from foreman and grower. */
const crownChecks = (look: WeatherLook): FactOf<'crown-checked'>[] =>
  look.harvest.crownChecks.filter(
    ({ field, sound, by }) =>
      (field === null || isOfStation(look, field)) && (!sound || isManager(look.harvest, by)),
  );

const frostLook = (look: WeatherLook): LookResult => {
  const { station, nowMs, forecasts } = look;
  const newest = newestOf(look, 'frost');
  const checks = crownChecks(look);
  const options = {
    ...FROST_OPTIONS,
    alerts: freezeAlerts(forecasts, nowMs),
    crownChecks: checks,
    earlier: forecasts.slice(0, -1),
  };
  const eventId = `frost-${station.id}-${nowMs}`;
  const forecast = forecasts.at(-1) ?? NO_FORECAST;
  const { step, wakeAtMs } = frostHold(newest?.step ?? null, forecast, station, nowMs, eventId, options);
  const announcedMs = step && frostAnnouncedMs(look, step);
  if (announcedMs !== null) return { fact: null, wakeAtMs: announcedMs };
  const isByCheck = step?.stage === 'all-clear' && step.source === 'person';
  return resultOf(step, isByCheck ? (checks.at(-1)?.by ?? null) : null, wakeAtMs, look);
};

/** An event without a place belongs to all stations; its next step is raised once. */
const onceEach = (facts: readonly Fact[]): Fact[] =>
  facts.filter((fact, at) => facts.findIndex(({ id }) => id === fact.id) === at);

/** Notices that the weather requires now, and when to look again if nothing new is heard; null = no need. */
export const lookAtWeather = (
  harvest: Harvest,
  clock: ZoneClock,
  nowMs: EpochMs,
): { facts: Fact[]; wakeAtMs: EpochMs | null } => {
  const all = harvest.roster.stations.flatMap((station) => {
    const look = { harvest, station, clock, nowMs, forecasts: forecastsBy(harvest, station.id, nowMs) };
    return [heatLook(look), frostLook(look)];
  });
  const wakes = all.flatMap(({ wakeAtMs }) => (wakeAtMs === null || wakeAtMs <= nowMs ? [] : [wakeAtMs]));
  return {
    facts: onceEach(all.flatMap(({ fact }) => (fact ? [fact] : []))),
    wakeAtMs: wakes.length > 0 ? Math.min(...wakes) : null,
  };
};
