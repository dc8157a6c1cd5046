/** "Wait for the all-clear" is a promise: where no forecast will keep it, foreman and grower are asked to decide in time. */
import type { NoticeEvent } from '../harvest/harvest.ts';
import { managers } from '../roster.ts';
import type { Tell } from '../telling.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { FORECAST_MAX_AGE_MIN } from '../weather/assumptions.ts';
import { forecastsBy } from '../weather/heat-basis.ts';
import { DECIDE_AHEAD_MIN, LATEST_MIN, DECIDE_AFTER_MIN } from './assumptions.ts';
import { newestStep, openNotices } from './notices.ts';
import type { RaisedStep } from './notices.ts';
import { personAwakeMs } from './quiet.ts';
import type { Moment } from './shifts.ts';

interface Asked {
  dueMs: EpochMs;
  tell: Tell;
}

/** From when on it must be asked; null = the newest forecast can still keep the promise, or a person ordered the stop. */
const askedFromMs = (raised: RaisedStep, forecastMs: EpochMs | null): EpochMs | null => {
  const { notice, source, stage, place, stopAtMs, resumeAtMs } = raised.step;
  if (notice !== 'heat' || source !== 'forecast' || stage === 'watch' || place === null) return null;
  const staleMs = forecastMs === null ? -Infinity : addMinutes(forecastMs, FORECAST_MAX_AGE_MIN);
  if (resumeAtMs !== null && staleMs >= resumeAtMs) return null;
  const fromMs =
    resumeAtMs === null ? Math.max(staleMs, stopAtMs ?? 0) : addMinutes(resumeAtMs, 0 - DECIDE_AHEAD_MIN);
  return Math.max(fromMs, addMinutes(raised.heardMs, DECIDE_AFTER_MIN));
};

/** It rings, so whoever sleeps is asked in the morning. */
const askedOf = (event: NoticeEvent, moment: Moment): Asked[] => {
  const { harvest, nowMs } = moment;
  const raised = newestStep(event);
  const { step } = raised;
  const forecasts = step.place === null ? [] : forecastsBy(harvest, step.place, nowMs);
  const forecastMs = forecasts.at(-1)?.issuedMs ?? null;
  const fromMs = askedFromMs(raised, forecastMs);
  if (fromMs === null) return [];
  const key = `decide:${step.event}:${step.number}`;
  return managers(harvest.roster).map((person) => ({
    dueMs: personAwakeMs({ ...moment, nowMs: fromMs }, person),
    tell: {
      audience: { to: 'person', person: person.id },
      telling: { tell: 'decide', step, forecastMs },
      urgent: true,
      key,
    },
  }));
};

/** What is due by `nowMs`, and when something is due next. The same question has the same key, so it is asked once. */
export const promises = (moment: Moment): { tells: Tell[]; wakeAtMs: EpochMs | null } => {
  const { harvest, nowMs } = moment;
  const all = openNotices(harvest).flatMap((event) => askedOf(event, moment));
  const isDue = ({ dueMs }: Asked): boolean => dueMs <= nowMs && nowMs <= addMinutes(dueMs, LATEST_MIN);
  const wakes = all.map(({ dueMs }) => dueMs).filter((ms) => ms > nowMs);
  return {
    tells: all.filter(isDue).map(({ tell }) => tell),
    wakeAtMs: wakes.length > 0 ? Math.min(...wakes) : null,
  };
};
