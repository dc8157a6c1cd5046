/**
 * Time to act decides how loud: hours ahead a stop of the forecast is advice, told to the room; an hour before the topper
 * must stop it is an order, which rings for everybody and is to be confirmed.
 */
import type { Harvest, NoticeEvent } from '../harvest/harvest.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { LATEST_REMINDER_MIN } from './assumptions.ts';
import { isOrder, newestStep, openNotices, orderMs } from './notices.ts';
import type { RaisedStep } from './notices.ts';

/** Somebody was ordered to stop by then, before the step of that number: the crew must hear what became of it. */
export const wasOrdered = ({ steps }: NoticeEvent, number: number, nowMs: EpochMs): boolean =>
  steps
    .filter(({ step }) => step.number < number)
    .some((raised, at, before) => isOrder(raised, before[at + 1]?.heardMs ?? nowMs));

/** Stops that were told as advice, and have become orders by `nowMs`; and when the next one does. */
export const dueOrders = (
  harvest: Harvest,
  nowMs: EpochMs,
): { due: RaisedStep[]; wakeAtMs: EpochMs | null } => {
  const later = openNotices(harvest).flatMap((event) => {
    const raised = newestStep(event);
    const ms = orderMs(raised);
    return ms !== null && ms > raised.heardMs ? [{ raised, ms }] : [];
  });
  const wakes = later.map(({ ms }) => ms).filter((ms) => ms > nowMs);
  return {
    due: later
      .filter(({ ms }) => ms <= nowMs && nowMs <= addMinutes(ms, LATEST_REMINDER_MIN))
      .map(({ raised }) => raised),
    wakeAtMs: wakes.length > 0 ? Math.min(...wakes) : null,
  };
};
