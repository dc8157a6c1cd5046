/** "Do we need another truck?" */
import { minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import { haulCycle } from '../line/round-trip.ts';
import { runFleet, runFleetOn, trucksNeeded } from '../line/fleet.ts';
import type { FleetCourse, FleetMatch } from '../line/fleet.ts';
import type { ForecastWait, LineObservations, WaitForecast } from '../line/types.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { haulMinutes } from '../harvest/usual-times.ts';

interface Figures {
  medianMin: Minutes;
  lowMin: Minutes;
  highMin: Minutes;
}

/** Where nothing is known of the line, today or usually; common practice, no source. */
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

export const fleetMatch = (
  harvest: Harvest,
  observations: LineObservations,
  today: { fromMs: EpochMs; nowMs: EpochMs },
  forecastWait: ForecastWait,
): FleetMatch => {
  const { station } = observations;
  const field = harvest.dugField;
  const { fromMs, nowMs } = today;
  const forecast = forecastWait(observations, {
    nowMs,
    arriveInMin: haulMinutes(harvest, station, field),
    withCourses: true,
  });
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
