import { DAY_BEGINS_HOUR } from '../assumptions.ts';
import type { NoticeBasis, NoticeStep } from '../book/facts.ts';
import { MS_PER_MINUTE } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { startOfDayMs, wallTimeOfDayMs } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { crossings } from './crossing.ts';
import { workLeft, coversRest, isSameDay } from './day-window.ts';
import { HEAT_OPTIONS, withPast } from './heat-options.ts';
import type { HeatCase, HeatOptions, HeatStation } from './heat-options.ts';
import { later5 } from './ladder.ts';
import { isMeasuredWarm, measuredCoolMs, standingAir } from './measured.ts';
import { restartMs } from './restart.ts';
import { shelvedUntilMs, strongerStop } from './shelved.ts';
import { allClear } from './steps.ts';
import { asItComes, corrected, forecastStop, issuedOf, measuredStop } from './stop-cause.ts';
import type { Stop } from './stop-cause.ts';
import type { IssuedForecast } from './types.ts';

export { HEAT_OPTIONS } from './heat-options.ts';
export type { HeatOptions, HeatStation } from './heat-options.ts';

export interface HeatDecision {
  /** The next step of the notice; null = none. */
  step: NoticeStep | null;
  /** When to look again even if nothing new is heard. */
  wakeAtMs: EpochMs | null;
}

const stepOf = (
  { times, cause, basis }: Stop,
  place: string,
  step: Pick<NoticeStep, 'event' | 'number' | 'stage'>,
): NoticeStep => ({
  ...step,
  notice: 'heat',
  source: 'forecast',
  place,
  ...times,
  ...cause,
  words: null,
  basis,
});

const isFresh = ({ nowMs, options }: HeatCase, forecast: IssuedForecast): boolean =>
  nowMs - forecast.issuedMs <= options.maxAgeMin * MS_PER_MINUTE;

/** What an end by the forecast goes by. */
const endBasis = (heatCase: HeatCase): NoticeBasis => {
  const air = standingAir(heatCase);
  return { forecastMs: issuedOf(heatCase.forecast), measured: air && { what: 'air', ...air } };
};

const endedByForecast = (heatCase: HeatCase, current: NoticeStep): HeatDecision =>
  tomorrow(heatCase, allClear(current, heatCase.nowMs, 'forecast', endBasis(heatCase)));

/** Nothing more to do today: look again in the morning if tomorrow is likely too warm. */
const tomorrow = (heatCase: HeatCase, step: NoticeStep | null): HeatDecision => {
  const dawnMs = wallTimeOfDayMs(
    heatCase.clock,
    heatCase.station.zone,
    heatCase.nowMs,
    DAY_BEGINS_HOUR,
    0,
    1,
  );
  const next = forecastStop(heatCase, dawnMs);
  // Warmth before dawn is told of in time for the topper of the night.
  const lastCallMs = (next?.times.stopToppingMs ?? 0) - heatCase.options.lastCallMin * MS_PER_MINUTE;
  return { step, wakeAtMs: next && Math.min(dawnMs, Math.max(lastCallMs, heatCase.nowMs + 1)) };
};

/** When to look again at a stop that was announced: at a likely one shortly before the topper must stop. */
const nextLook = ({ nowMs, options }: HeatCase, { isSure, times }: Stop): EpochMs | null =>
  isSure ? times.resumeAtMs : Math.max(times.stopToppingMs - options.lastCallMin * MS_PER_MINUTE, nowMs);

/** The station said "open" after the time from which we would stop. Its word is valid for the day. */
const stationTakesBeets = ({ clock, station, nowMs, options }: HeatCase, fromMs: EpochMs): boolean => {
  const { stationWord } = options;
  if (!stationWord?.open || stationWord.atMs < fromMs) return false;
  return isSameDay(clock, station.zone, stationWord.atMs, nowMs) && nowMs < (stationWord.untilMs ?? Infinity);
};

const raised = (heatCase: HeatCase, stop: Stop, event: string): HeatDecision => {
  const stage = stop.isSure ? 'stop' : 'watch';
  const step = stepOf(stop, heatCase.station.id, { event, number: 1, stage });
  return { step, wakeAtMs: nextLook(heatCase, stop) };
};

const raise = (heatCase: HeatCase, event: string): HeatDecision => {
  const stop = measuredStop(heatCase) ?? forecastStop(heatCase, heatCase.nowMs);
  return !stop || stationTakesBeets(heatCase, stop.warmMs)
    ? tomorrow(heatCase, null)
    : raised(heatCase, stop, event);
};

/** By that forecast the rest of the day's work stays well below the limit; an hour that is missing is not cool. */
const isCoolBy = (heatCase: HeatCase, stopAtMs: EpochMs): boolean => {
  const { station, options } = heatCase;
  const window = workLeft(heatCase, stopAtMs);
  if (window === null) return true;
  const { forecast } = asItComes(heatCase, stopAtMs);
  const { peakF } = crossings(forecast.hours, station.airLimitF, window);
  const isCool = peakF !== null && peakF <= station.airLimitF - options.deadbandF;
  return isCool && coversRest(heatCase, window);
};

/** The forecast before the newest one, unless it is too old; null = there is none. */
const forecastBefore = (heatCase: HeatCase): IssuedForecast | null => {
  const { earlier } = heatCase.options;
  const previous = earlier.at(-1);
  return previous && isFresh(heatCase, previous) ? withPast(previous, earlier.slice(0, -1)) : null;
};

/** Two issues in a row say so, and no thermometer says otherwise: one issue may be wrong. */
const isCalledOff = (heatCase: HeatCase, stopAtMs: EpochMs): boolean => {
  if (isMeasuredWarm(heatCase) || !isFresh(heatCase, heatCase.forecast)) return false;
  const before = forecastBefore(heatCase);
  return (
    isCoolBy(heatCase, stopAtMs) && (before === null || isCoolBy({ ...heatCase, forecast: before }, stopAtMs))
  );
};

/**
 * The stop has moved by enough to be announced: earlier at once, later only if the forecast before says so too.
 */
const hasMoved = (heatCase: HeatCase, announcedMs: EpochMs, nextMs: EpochMs): boolean => {
  const { options } = heatCase;
  const leastMs = options.updateMin * MS_PER_MINUTE;
  if (nextMs <= announcedMs - leastMs) return true;
  if (nextMs < announcedMs + leastMs) return false;
  const before = options.earlier.at(-1);
  if (!before) return true;
  const forecast = withPast(before, options.earlier.slice(0, -1));
  const stop = forecastStop({ ...heatCase, forecast }, announcedMs);
  return stop === null || stop.times.stopAtMs >= announcedMs + leastMs;
};

/** A watch, or a stop that has not begun: it may become sure, move or be called off. */
const reconsider = (heatCase: HeatCase, current: NoticeStep, stopAtMs: EpochMs): HeatDecision => {
  const { station } = heatCase;
  const stop = measuredStop(heatCase) ?? forecastStop(heatCase, stopAtMs);
  if (!stop) {
    return isCalledOff(heatCase, stopAtMs)
      ? endedByForecast(heatCase, current)
      : { step: null, wakeAtMs: current.stage === 'watch' ? null : current.resumeAtMs };
  }
  const isWatch = current.stage === 'watch';
  const isNews = isWatch ? stop.isSure : hasMoved(heatCase, stopAtMs, stop.times.stopAtMs);
  const next = {
    event: current.event,
    number: current.number + 1,
    stage: isWatch ? 'stop' : 'update',
  } as const;
  // A stop that was announced stays, however its chance changes; only a watch waits to become sure.
  const wakeAtMs = isWatch ? nextLook(heatCase, stop) : stop.times.resumeAtMs;
  return { step: isNews ? stepOf(stop, station.id, next) : null, wakeAtMs };
};

/** From when on it is cool by the newest forecast and, if that is not too old, by the one before; null = not forecast. */
const coolMs = (heatCase: HeatCase, stopAtMs: EpochMs): EpochMs | null => {
  const restartBy = (one: IssuedForecast): EpochMs | null =>
    restartMs(corrected({ ...heatCase, forecast: one }, stopAtMs), stopAtMs);
  const newestMs = restartBy(heatCase.forecast);
  const before = forecastBefore(heatCase);
  if (newestMs === null || before === null) return newestMs;
  const previousMs = restartBy(before);
  return previousMs === null ? null : Math.max(newestMs, previousMs);
};

/** Until when the station, by its word of that day or later, takes no beets; 0 = it does, null = until it says so. */
const closedUntilMs = ({ clock, station, options }: HeatCase, stopAtMs: EpochMs): EpochMs | null => {
  const { stationWord } = options;
  if (!stationWord || stationWord.open) return 0;
  return stationWord.atMs >= startOfDayMs(clock, station.zone, stopAtMs) ? stationWord.untilMs : 0;
};

/** The restart that was announced is off by so much that people would wait in vain. */
const restartMoved = (current: NoticeStep, resumeAtMs: EpochMs, { options }: HeatCase): boolean =>
  current.resumeAtMs === null ||
  Math.abs(resumeAtMs - current.resumeAtMs) >= options.restartUpdateMin * MS_PER_MINUTE;

/**
 * The restart as it is told; undefined = as before. Air that is measured warm puts it off from hour to hour: told once with
 * a time, then as unknown, and then no more until the all-clear.
 */
const restartTold = (
  current: NoticeStep,
  byForecastMs: EpochMs,
  measuredMs: EpochMs,
  heatCase: HeatCase,
): EpochMs | null | undefined => {
  const resumeAtMs = Math.max(byForecastMs, measuredMs);
  const isPutOff = measuredMs > byForecastMs;
  const isTold = current.stage === 'update' && (current.resumeAtMs ?? Infinity) > byForecastMs;
  if (isPutOff && isTold && current.resumeAtMs === null) return undefined;
  if (!restartMoved(current, resumeAtMs, heatCase)) return undefined;
  return isPutOff && isTold ? null : resumeAtMs;
};

/** A stop that has begun: it ends when it is cool again by fresh forecasts that agree, or by the station's word. */
const release = (heatCase: HeatCase, current: NoticeStep, stopAtMs: EpochMs): HeatDecision => {
  const { nowMs, options, forecast } = heatCase;
  const sinceMs = Math.max(stopAtMs, options.lastStepMs ?? stopAtMs);
  if (stationTakesBeets(heatCase, sinceMs)) return tomorrow(heatCase, allClear(current, nowMs, 'person'));
  const [airMs, openMs] = [coolMs(heatCase, stopAtMs), closedUntilMs(heatCase, stopAtMs)];
  if (airMs === null || openMs === null || !isFresh(heatCase, forecast))
    return { step: null, wakeAtMs: null };
  const dwellEndMs = sinceMs + options.dwellMin * MS_PER_MINUTE;
  const [forecastMs, measuredMs] = [Math.max(airMs, openMs), later5(measuredCoolMs(heatCase, stopAtMs))];
  const resumeAtMs = Math.max(forecastMs, measuredMs);
  if (nowMs >= Math.max(resumeAtMs, dwellEndMs)) return endedByForecast(heatCase, current);
  const told = restartTold(current, forecastMs, measuredMs, heatCase);
  const wakeAtMs = Math.max(resumeAtMs, dwellEndMs);
  if (nowMs < dwellEndMs || told === undefined) return { step: null, wakeAtMs };
  const number = current.number + 1;
  const step = {
    ...current,
    number,
    stage: 'update',
    resumeAtMs: told,
    restartOnly: true,
    words: null,
  } as const;
  return { step, wakeAtMs };
};

/** After a person's all-clear: quiet for a while, but for what is clearly worse. */
const raiseAgain = (heatCase: HeatCase, current: NoticeStep, event: string): HeatDecision => {
  const untilMs = shelvedUntilMs(current, heatCase);
  if (untilMs === null) return raise(heatCase, event);
  const stop = strongerStop(heatCase, current);
  return stop && !stationTakesBeets(heatCase, stop.warmMs)
    ? raised(heatCase, stop, event)
    : { step: null, wakeAtMs: untilMs };
};

/** A watch that never became a stop ends with its day, without a word. */
const isLapsed = (current: NoticeStep, { clock, station, nowMs }: HeatCase): boolean =>
  current.stage === 'watch' && !isSameDay(clock, station.zone, current.stopAtMs ?? nowMs, nowMs);

/**
 * The next step of the heat stop at one station, or none.
 *
 * A watch is raised for today if the afternoon will likely pass the station's air limit, a stop if it almost surely
 * will, if the last hour before it has come, or if roots were measured too warm. The times are worked back so that the
 * last load is piled before the crossing. A stop moves when its time moves by half an hour, and ends when the air is
 * cool, the roots have followed and two forecasts agree; a person or the station may end it at any time. The same
 * forecast taken in twice changes nothing. What a person ordered is never ended here, and what a person ended is shelved
 * for hours (shelved.ts).
 *
 * @param current the newest step of the newest heat event of that station; null = there was none
 * @param eventId used when a new event begins
 */
export const heatStop = (
  current: NoticeStep | null,
  forecast: IssuedForecast,
  station: HeatStation,
  clock: ZoneClock,
  nowMs: EpochMs,
  eventId: string,
  options: HeatOptions = HEAT_OPTIONS,
): HeatDecision => {
  const heatCase = { forecast: withPast(forecast, options.earlier), station, clock, nowMs, options };
  if (current?.notice !== 'heat' || isLapsed(current, heatCase)) return raise(heatCase, eventId);
  if (current.stage === 'all-clear') {
    return raiseAgain(heatCase, current, eventId);
  }
  if (current.source === 'person') return { step: null, wakeAtMs: null };
  const stopAtMs = current.stopAtMs ?? nowMs;
  const hasBegun = current.stage !== 'watch' && nowMs >= stopAtMs;
  return hasBegun ? release(heatCase, current, stopAtMs) : reconsider(heatCase, current, stopAtMs);
};
