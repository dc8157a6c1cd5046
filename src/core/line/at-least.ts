/** A forecast of the line, and the wait for a station that is closed until then. */
import { addMinutes, minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import { COURSE_STEP_MIN } from './model/courses.ts';
import type { WaitAsk, WaitForecast } from './types.ts';

interface Figures {
  medianMin: Minutes;
  lowMin: Minutes;
  highMin: Minutes;
}

const raised = <F extends Figures>(figures: F, leastMin: Minutes): F => ({
  ...figures,
  medianMin: Math.max(figures.medianMin, leastMin),
  lowMin: Math.max(figures.lowMin, leastMin),
  highMin: Math.max(figures.highMin, leastMin),
});

/** No truck is weighed before the station opens. `opensMs` null = it is open, or nobody has said when it opens. */
export const openedFirst = (
  forecast: WaitForecast,
  { nowMs, arriveInMin }: WaitAsk,
  opensMs: EpochMs | null,
): WaitForecast => {
  if (opensMs === null) return forecast;
  const leastMin = minutesBetween(addMinutes(nowMs, arriveInMin), opensMs);
  if (!forecast.known)
    return { ...forecast, usual: forecast.usual && raised(forecast.usual, Math.max(0, leastMin)) };
  const courses = forecast.courses?.map((course) =>
    course.map((min, at) => Math.max(min, minutesBetween(addMinutes(nowMs, at * COURSE_STEP_MIN), opensMs))),
  );
  return { ...raised(forecast, Math.max(0, leastMin)), ...(courses && { courses }) };
};
