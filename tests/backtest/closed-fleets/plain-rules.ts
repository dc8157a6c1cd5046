/** What a crew can do without a model: its own last waits, and the usual wait of the hour. Nothing is corrected. */
import type { WaitInterval } from '../../../src/core/line/model/calibration.ts';
import { nearestInterval } from '../conformal.ts';
import type { Past } from '../conformal.ts';
import { mean } from '../scoring.ts';
import type { ToldWait } from './telling.ts';

const HOUR_MS = 3_600_000;
const BLOCK_MS = 2 * HOUR_MS;
const DAY_MS = 24 * HOUR_MS;
/** Before anything was told. */
const GUESS_MIN = 15;

const waitMin = ({ joinedMs, weighedMs }: ToldWait): number => (weighedMs - joinedMs) / 60_000;

export interface PlainAsk {
  /** Everything that was told so far; today is what joined after `openedMs`. */
  waits: readonly ToldWait[];
  openedMs: number;
  nowMs: number;
  arrivesMs: number;
}

const known = ({ waits, nowMs }: PlainAsk): ToldWait[] =>
  waits.filter(({ heardMs }) => heardMs <= nowMs).sort((a, b) => a.weighedMs - b.weighedMs);

const usual = (ask: PlainAsk): number => {
  const all = known(ask);
  const blockOf = (atMs: number): number => Math.floor(((atMs - ask.openedMs) % DAY_MS) / BLOCK_MS);
  const past = all.filter(({ joinedMs }) => joinedMs < ask.openedMs);
  const block = blockOf(ask.arrivesMs);
  const same = past.filter(({ joinedMs }) => blockOf(joinedMs + 40 * DAY_MS) === block);
  const from = same.length >= 5 ? same : past.length >= 5 ? past : all;
  return from.length > 0 ? mean(from.map(waitMin)) : GUESS_MIN;
};

const last = (ask: PlainAsk): number => {
  const newest = known(ask).at(-1);
  return newest !== undefined && newest.weighedMs >= ask.openedMs ? waitMin(newest) : usual(ask);
};

const lastHour = (ask: PlainAsk): number => {
  const recent = known(ask).filter(({ weighedMs }) => weighedMs > ask.nowMs - HOUR_MS);
  return recent.length > 0 ? mean(recent.map(waitMin)) : last(ask);
};

export const PLAIN_RULES = { 'last wait': last, 'usual of the hour': usual, 'last hour': lastHour };
export const BASE_RULE = 'last wait';

export const withInterval = (past: readonly Past[], forecastMin: number): WaitInterval =>
  past.length < 20
    ? { lowMin: 0, medianMin: forecastMin, highMin: 2 * forecastMin + 20 }
    : nearestInterval(past, forecastMin);
