/** The round trip as this crew drives it: how long each part takes, learned from its own day. */
import { fieldById } from '../roster.ts';
import type { FieldId, StationId } from '../roster.ts';
import { acresPerHour } from '../answers/field-capacity.ts';
import { meanLoadLb } from '../answers/left.ts';
import { LB_PER_SHORT_TON, minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import type { FleetCycle } from './fleet.ts';
import { believedFill, medianFillMin } from '../harvest/fills.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { allLoads } from '../harvest/harvest.ts';
import { median } from '../statistics.ts';
import { haulMinutes } from '../harvest/usual-times.ts';

/** Where nothing tells otherwise: 10-12 min to fill a truck of 20 tons; common practice, no source. */
const USUAL_LOAD_MIN: Minutes = 11;
/** Between the weights; common practice, no source. */
const USUAL_YARD_MIN: Minutes = 12;
const FEWEST_DEPARTURES = 6;

/** At the digger's field capacity and the yield expected of the field. */
const byDigger = (harvest: Harvest, field: FieldId | null): Minutes | null => {
  const { digger } = harvest.roster;
  const tonsPerAcre = field === null ? null : (fieldById(harvest.roster, field)?.yieldTonsPerAcre ?? null);
  if (digger === null || tonsPerAcre === null) return null;
  return (60 * meanLoadLb(harvest)) / LB_PER_SHORT_TON / (acresPerHour(digger) * tonsPerAcre);
};

/** Trucks leave one after another: where one waits for the other the gap is the loading time, else it is longer. */
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

/** Minutes to fill a truck: as told by the drivers, else by the digger's own pace, else as the trucks leave. */
const loadMinutes = (harvest: Harvest, field: FieldId | null, fromMs: EpochMs): Minutes => {
  const ofDay = medianFillMin(harvest.filling.fills.filter(({ begunMs }) => begunMs >= fromMs));
  return ofDay ?? byDigger(harvest, field) ?? byDepartures(harvest, fromMs) ?? USUAL_LOAD_MIN;
};

const yardMinutes = (harvest: Harvest, station: StationId): Minutes =>
  median(
    allLoads(harvest).flatMap(({ station: of, stamps }) => {
      const { 'first-weighed': first, 'second-weighed': second } = stamps;
      if (of !== station || !first || !second || first.source === 'inferred') return [];
      const min = minutesBetween(first.atMs, second.atMs);
      return min > 0 && min < 120 ? [min] : [];
    }),
  ) ?? USUAL_YARD_MIN;

/** Travel and unloading scatter by so much of their mean; common practice, no source. */
const AWAY_CV = 0.25;
/** From the middle of an 80 % interval to its ends, in standard deviations. */
const Z_80 = 1.2816;

/** The way back takes about as long as the way there; common practice, no source. */
export const haulCycle = (
  harvest: Harvest,
  station: StationId,
  field: FieldId | null,
  fromMs: EpochMs,
  wait: { medianMin: Minutes; lowMin: Minutes; highMin: Minutes },
): FleetCycle => {
  const haulMin = haulMinutes(harvest, station, field);
  const ownMin = 2 * haulMin + yardMinutes(harvest, station);
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
