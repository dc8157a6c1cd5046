/** How long each part of the round trip takes this crew, learned from its own day. */
import { USUAL_FILL_MIN } from '../assumptions.ts';
import { fieldById } from '../roster.ts';
import type { FieldId, StationId } from '../roster.ts';
import { acresPerHour } from '../answers/field-capacity.ts';
import { meanLoadLb } from '../answers/left.ts';
import { LB_PER_SHORT_TON, MIN_PER_HOUR, minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import { AWAY_CV, EMPTY_HAUL_RATIO, FEWEST_DEPARTURES, LONGEST_YARD_MIN, YARD_MIN } from './assumptions.ts';
import type { FleetCycle } from './fleet.ts';
import { believedFill, medianFillMin } from '../harvest/fills.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { allLoads } from '../harvest/harvest.ts';
import { Z_80, median } from '../statistics.ts';
import { haulMinutes } from '../harvest/usual-times.ts';

/** By the digger's field capacity and the expected yield of the field. */
const byDigger = (harvest: Harvest, field: FieldId | null): Minutes | null => {
  const { digger } = harvest.roster;
  const tonsPerAcre = field === null ? null : (fieldById(harvest.roster, field)?.yieldTonsPerAcre ?? null);
  if (digger === null || tonsPerAcre === null) return null;
  return (MIN_PER_HOUR * meanLoadLb(harvest)) / LB_PER_SHORT_TON / (acresPerHour(digger) * tonsPerAcre);
};

/** Trucks leave one after another: if one waits for the other, the gap is the filling time, otherwise it is longer. */
const byDepartures = (harvest: Harvest, fromMs: EpochMs): Minutes | null => {
  const left = allLoads(harvest)
    .flatMap(({ stamps }) => stamps['left-field']?.atMs ?? [])
    .filter((atMs) => atMs >= fromMs)
    .sort((a, b) => a - b);
  const gaps = left
    .slice(1)
    .map((atMs, before) => minutesBetween(left[before] ?? atMs, atMs))
    .filter(believedFill)
    .sort((a, b) => a - b);
  return gaps.length < FEWEST_DEPARTURES ? null : (gaps[Math.floor(gaps.length / 4)] ?? null);
};

/** Minutes to fill a truck: as reported, else by the digger's pace, else from the departures, else the usual. */
const loadMinutes = (harvest: Harvest, field: FieldId | null, fromMs: EpochMs): Minutes => {
  const ofDay = medianFillMin(harvest.filling.fills.filter(({ begunMs }) => begunMs >= fromMs));
  return ofDay ?? byDigger(harvest, field) ?? byDepartures(harvest, fromMs) ?? USUAL_FILL_MIN;
};

const yardMinutes = (harvest: Harvest, station: StationId): Minutes =>
  median(
    allLoads(harvest).flatMap(({ station: of, stamps }) => {
      const { 'first-weighed': first, 'second-weighed': second } = stamps;
      if (of !== station || !first || !second || first.source === 'inferred') return [];
      const min = minutesBetween(first.atMs, second.atMs);
      return min > 0 && min < LONGEST_YARD_MIN ? [min] : [];
    }),
  ) ?? YARD_MIN;

export const haulCycle = (
  harvest: Harvest,
  station: StationId,
  field: FieldId | null,
  fromMs: EpochMs,
  wait: { medianMin: Minutes; lowMin: Minutes; highMin: Minutes },
): FleetCycle => {
  const haulMin = haulMinutes(harvest, station, field);
  const ownMin = (1 + EMPTY_HAUL_RATIO) * haulMin + yardMinutes(harvest, station);
  const waitSdMin = (wait.highMin - wait.lowMin) / (2 * Z_80);
  return {
    loadMin: loadMinutes(harvest, field, fromMs),
    awayMin: ownMin + wait.medianMin,
    awaySdMin: Math.hypot(AWAY_CV * ownMin, waitSdMin),
    haulMin,
    ownMin,
    ownSdMin: AWAY_CV * ownMin,
  };
};
