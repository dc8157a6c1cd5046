/** "Wait for the all-clear" is a promise: where no forecast will keep it, foreman and grower are asked to decide in time. */
import type { Harvest, NoticeEvent } from '../harvest/harvest.ts';
import type { Tell } from '../telling.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { FORECAST_MAX_AGE_MIN } from '../weather/assumptions.ts';
import { forecastsBy } from '../weather/heat-basis.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { DECIDE_AHEAD_MIN, LATEST_MIN, DECIDE_AFTER_MIN } from './assumptions.ts';
import { managersOf, tellAll } from './audiences.ts';
import { newestStep, openNotices } from './notices.ts';
import type { RaisedStep } from './notices.ts';
import { awakeMs } from './quiet.ts';

interface Asked {
  raised: RaisedStep;
  forecastMs: EpochMs | null;
  dueMs: EpochMs;
}

/** When it must be asked; null = the newest forecast can still keep the promise, or a person ordered the stop. */
const askedOf = (event: NoticeEvent, harvest: Harvest, clock: ZoneClock, nowMs: EpochMs): Asked | null => {
  const raised = newestStep(event);
  const { notice, source, stage, place, stopAtMs, resumeAtMs } = raised.step;
  if (notice !== 'heat' || source !== 'forecast' || stage === 'watch' || place === null) return null;
  const forecastMs = forecastsBy(harvest, place, nowMs).at(-1)?.issuedMs ?? null;
  const staleMs = forecastMs === null ? -Infinity : addMinutes(forecastMs, FORECAST_MAX_AGE_MIN);
  if (resumeAtMs !== null && staleMs >= resumeAtMs) return null;
  const fromMs =
    resumeAtMs === null ? Math.max(staleMs, stopAtMs ?? 0) : addMinutes(resumeAtMs, 0 - DECIDE_AHEAD_MIN);
  return {
    raised,
    forecastMs,
    dueMs: awakeMs(harvest, clock, Math.max(fromMs, addMinutes(raised.heardMs, DECIDE_AFTER_MIN))),
  };
};

const tellsFor = ({ raised: { step }, forecastMs }: Asked, harvest: Harvest): Tell[] =>
  tellAll(
    managersOf(harvest.roster),
    { tell: 'decide', step, forecastMs },
    `decide:${step.event}:${step.number}`,
    true,
  );

/** What is due by `nowMs`, and when something is due next. The same question has the same key, so it is asked once. */
export const promises = (
  harvest: Harvest,
  clock: ZoneClock,
  nowMs: EpochMs,
): { tells: Tell[]; wakeAtMs: EpochMs | null } => {
  const all = openNotices(harvest).flatMap((event) => askedOf(event, harvest, clock, nowMs) ?? []);
  const isDue = ({ dueMs }: Asked): boolean => dueMs <= nowMs && nowMs <= addMinutes(dueMs, LATEST_MIN);
  const wakes = all.map(({ dueMs }) => dueMs).filter((ms) => ms > nowMs);
  return {
    tells: all.filter(isDue).flatMap((asked) => tellsFor(asked, harvest)),
    wakeAtMs: wakes.length > 0 ? Math.min(...wakes) : null,
  };
};
