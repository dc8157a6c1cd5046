import { readFileSync } from 'node:fs';

const data = new URL('../../node_modules/vega-datasets/data/', import.meta.url);
const rows = (name: string): string[][] =>
  readFileSync(new URL(name, data), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(','));

/**
 * Hourly normals of Seattle (npm vega-datasets 3.2.1, a U.S. Government dataset) in °C. Its hours are local standard time
 * without a zone; they are read as if they were UTC, so that a day is 00:00-24:00Z. The first hour of the year is missing.
 */
export const seattleHours = (): { startMs: number; celsius: number }[] =>
  rows('seattle-weather-hourly-normals.csv').map(([date = '', , celsius = '']) => ({
    startMs: Date.parse(`${date}Z`),
    celsius: Number(celsius),
  }));

/** Highest and lowest of each day of Seattle, 2012-2015, in °C; from the same package. */
export const seattleDays = (): { date: string; highest: number; lowest: number }[] =>
  rows('seattle-weather.csv').map(([date = '', , highest = '', lowest = '']) => ({
    date,
    highest: Number(highest),
    lowest: Number(lowest),
  }));
