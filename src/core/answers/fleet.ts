/** "Do we need another truck?" */
import { NO_STATION, askedStation, seenToday, spanOf, troubleFor } from './asking.ts';
import type { Asking } from './asking.ts';
import type { StationId } from '../roster.ts';
import { minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import { haulCycle } from '../line/round-trip.ts';
import { runFleet, runFleetOn, trucksNeeded } from '../line/fleet.ts';
import type { FleetCourse, FleetMatch } from '../line/fleet.ts';
import type { WaitForecast, WaitNeed } from '../line/types.ts';
import type { Telling } from '../telling.ts';
import { haulMinutes } from '../harvest/usual-times.ts';
import type { Harvest } from '../harvest/harvest.ts';

interface Figures {
  medianMin: Minutes;
  lowMin: Minutes;
  highMin: Minutes;
}

/** Where nothing is known of the line, today or usually. Grade: common practice. */
const UNKNOWN_WAIT: Figures = { lowMin: 0, medianMin: 15, highMin: 60 };

const figuresOf = (forecast: WaitForecast): Figures =>
  forecast.known ? forecast : (forecast.usual ?? UNKNOWN_WAIT);

/** A truck of which nothing is heard for longer hauls no more. */
const HAULS_MIN: Minutes = 240;

/** Trucks that go round now; all of the list where none does yet. */
const trucksHauling = (harvest: Harvest, nowMs: EpochMs): number => {
  const hauling = [...harvest.trucks.values()].filter(
    ({ phase, sinceMs }) =>
      phase !== 'parked' && phase !== 'down' && minutesBetween(sinceMs, nowMs) < HAULS_MIN,
  );
  return hauling.length > 0 ? hauling.length : harvest.roster.trucks.length;
};

/** The fleet against the digger and the line. `forecast`: the wait of a truck that leaves the field now, with courses. */
const fleetMatch = (
  harvest: Harvest,
  station: StationId,
  { fromMs, nowMs }: { fromMs: EpochMs; nowMs: EpochMs },
  forecast: WaitForecast,
): FleetMatch => {
  const field = harvest.dugField;
  const wait = figuresOf(forecast);
  const cycle = haulCycle(harvest, station, field, fromMs, wait);
  const needed = trucksNeeded(cycle);
  const now = trucksHauling(harvest, nowMs);
  const trucks = now > 0 ? now : needed;
  const paths = forecast.known ? (forecast.courses ?? []) : [];
  const run = (count: number): FleetCourse =>
    paths.length > 0 ? runFleetOn(count, cycle, paths) : runFleet(count, cycle);
  const compared = [...new Set([trucks - 1, trucks, trucks + 1, needed])].filter((count) => count > 0);
  return {
    station,
    field,
    trucks,
    needed,
    loadMin: cycle.loadMin,
    roundMin: cycle.loadMin + cycle.awayMin,
    waitMin: wait.medianMin,
    waitKnown: forecast.known,
    onPaths: paths.length > 0,
    courses: compared.sort((a, b) => a - b).map(run),
  };
};

/** The wait of a truck that leaves the field now, with the ways in which the line may go. */
export const waitsForFleet = (harvest: Harvest, asking: Asking): WaitNeed[] => {
  const station = askedStation(harvest, asking, null);
  if (station === null) return [];
  const arriveInMin = haulMinutes(harvest, station, harvest.dugField);
  const ask = { nowMs: asking.nowMs, arriveInMin, withCourses: true } as const;
  return [{ observations: seenToday(harvest, station, asking), ask }];
};

/**
 * Runs the fleet where it is called, on the bot's own thread: with 60 days behind it, 40 courses and 24 trucks needed it
 * takes 8 to 10 ms of processor time, and the first time in a process several times that. Measured (`npm run bench`).
 */
export const answerFleet = (harvest: Harvest, asking: Asking, waits: readonly WaitForecast[]): Telling => {
  const station = askedStation(harvest, asking, null);
  const [forecast] = waits;
  if (station === null || forecast === undefined) return NO_STATION;
  const { fromMs } = spanOf(harvest, asking, 'today');
  const fleet = fleetMatch(harvest, station, { fromMs, nowMs: asking.nowMs }, forecast);
  const trouble = troubleFor(harvest, station, haulMinutes(harvest, station, harvest.dugField), asking);
  return { tell: 'fleet', fleet, trouble };
};
