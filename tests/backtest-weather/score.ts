/** What a way of stopping costs over a season: hours dug too warm against hours lost. */
import type { NoticeStep } from '../../src/core/book/facts.ts';
import { crossings, nodesOf, temperatureAt } from '../../src/core/weather/crossing.ts';
import { HOUR_MS } from './season.ts';
import type { HarvestDay, Issue } from './season.ts';

export const LIMIT_F = 55;
const TICK_MS = 15 * 60_000;
const DIG_FROM_HOUR = 4;

/** What stands at `nowMs`, given what stood before; the issues are those of up to then, oldest first. */
export type Rule = (
  current: { step: NoticeStep; atMs: number } | null,
  issues: readonly Issue[],
  nowMs: number,
) => NoticeStep | null;

export interface DayScore {
  isWarm: boolean;
  /** By how much the afternoon passed the limit, °F. */
  overF: number;
  /** A stop was told before the air passed the limit. */
  inTime: boolean;
  stopped: boolean;
  warmDugMin: number;
  /** Too cool to have stopped: before the crossing, on a cool day, or after the air was back at the limit. */
  lostMin: number;
  messages: number;
}

const isStopped = (step: NoticeStep | null, nowMs: number): boolean =>
  step !== null && (step.stage === 'stop' || step.stage === 'update') && (step.stopAtMs ?? Infinity) <= nowMs;

/** Digging goes on from 04:00 to midnight; the rule is asked every quarter of an hour. */
export const scoreDay = (day: HarvestDay, issues: readonly Issue[], rule: Rule): DayScore => {
  const window = { fromMs: day.midnightMs + 12 * HOUR_MS, toMs: day.midnightMs + 18 * HOUR_MS };
  const { upMs, peakF } = crossings(day.actual, LIMIT_F, window);
  const nodes = nodesOf(day.actual);
  let current: { step: NoticeStep; atMs: number } | null = null;
  let toldMs: number | null = null;
  const score = { stopped: false, warmDugMin: 0, lostMin: 0, messages: 0 };
  for (
    let nowMs = day.midnightMs + DIG_FROM_HOUR * HOUR_MS;
    nowMs < day.midnightMs + 24 * HOUR_MS;
    nowMs += TICK_MS
  ) {
    const known = issues.filter((issue) => issue.issuedMs <= nowMs);
    const step = rule(current, known, nowMs);
    if (step) {
      current = { step, atMs: nowMs };
      score.messages += 1;
      if (step.stage === 'stop') toldMs ??= nowMs;
    }
    const stands = isStopped(current?.step ?? null, nowMs);
    const isTooWarm = upMs !== null && (temperatureAt(nodes, nowMs) ?? 0) > LIMIT_F;
    score.stopped ||= stands;
    if (isTooWarm && !stands) score.warmDugMin += TICK_MS / 60_000;
    if (!isTooWarm && stands) score.lostMin += TICK_MS / 60_000;
  }
  // A night that is too warm from the start of digging on can be told no sooner than then.
  const neededMs = upMs === null ? null : Math.max(upMs, day.midnightMs + DIG_FROM_HOUR * HOUR_MS);
  const inTime = toldMs !== null && neededMs !== null && toldMs <= neededMs;
  return { isWarm: upMs !== null, overF: (peakF ?? 0) - LIMIT_F, inTime, ...score };
};
