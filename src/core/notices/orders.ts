/**
 * Time to act decides how loud: hours ahead a stop of the forecast is advice, told to the room; an hour before the topper
 * must stop it is an order, which rings for those who must act and is to be confirmed by them.
 */
import type { Harvest, NoticeEvent } from '../harvest/harvest.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { LATEST_MIN } from './assumptions.ts';
import { isOrder, newestStep, openNotices, orderOf } from './notices.ts';

/** Somebody was ordered to stop by then, before the step of that number: the crew must hear what became of it. */
export const wasOrdered = ({ steps }: NoticeEvent, number: number, nowMs: EpochMs): boolean =>
  steps
    .filter(({ step }) => step.number < number)
    .some((raised, at, before) => isOrder(raised, before[at + 1]?.heardMs ?? nowMs));

/** Stops that were told as advice, and have become orders by `nowMs`; and when the next one does. */
export const dueOrders = (
  harvest: Harvest,
  nowMs: EpochMs,
): { due: NoticeEvent[]; wakeAtMs: EpochMs | null } => {
  const later = openNotices(harvest).flatMap((event) => {
    const ms = orderOf(event)?.orderedMs ?? -Infinity;
    return ms > newestStep(event).heardMs ? [{ event, ms }] : [];
  });
  const wakes = later.map(({ ms }) => ms).filter((ms) => ms > nowMs);
  return {
    due: later
      .filter(({ ms }) => ms <= nowMs && nowMs <= addMinutes(ms, LATEST_MIN))
      .map(({ event }) => event),
    wakeAtMs: wakes.length > 0 ? Math.min(...wakes) : null,
  };
};
