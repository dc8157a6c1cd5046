/** Sixty days of each autumn of the data, with the crew and forecasts that are revised. The same at each run. */
import { crewSeason } from './crew-season.ts';
import { scoreSeason } from './crew-score.ts';
import type { SeasonScore } from './crew-score.ts';
import { forecastsOf } from './revisions.ts';
import { harvestDays, randomOf } from './season.ts';

export const YEARS = [2012, 2013, 2014, 2015] as const;
const DAYS = 60;
const SEED = 20261020;

export const seasonOf = (
  year: (typeof YEARS)[number],
): { score: SeasonScore; revisionsF: readonly number[] } => {
  const days = harvestDays()
    .filter(({ midnightMs }) => new Date(midnightMs).getUTCFullYear() === year)
    .slice(0, DAYS);
  const random = randomOf(SEED + year);
  const { issues, revisionsF } = forecastsOf(days, random);
  return { score: scoreSeason(days, crewSeason(days, issues, random)), revisionsF };
};
