/** People who have not said "got it" to a stop are reminded once; then foreman and grower get their names. */
import { LATEST_REMINDER_MIN, NAMES_MIN, REMIND_MIN } from './assumptions.ts';
import { newestStep, notSeen, orderMs } from './notices.ts';
import { awakeMs } from './quiet.ts';
import { managers } from '../roster.ts';
import type { PersonId } from '../roster.ts';
import type { Audience, Tell } from '../telling.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs } from '../units.ts';
import type { ZoneClock } from '../zone-clock.ts';
import type { NoticeEvent, Harvest } from '../harvest/harvest.ts';

interface ReminderDue {
  remindMs: EpochMs;
  namesMs: EpochMs;
}

const person = (id: PersonId): Audience => ({ to: 'person', person: id });

const tellsFor = (
  event: NoticeEvent,
  { remindMs, namesMs }: ReminderDue,
  harvest: Harvest,
  nowMs: EpochMs,
): Tell[] => {
  const { step } = newestStep(event);
  const { seen, unseen } = notSeen(event, harvest, nowMs);
  if (unseen.length === 0) return [];
  const key = `${step.event}:${step.number}`;
  const reminders = unseen.map((id): Tell => ({
    audience: person(id),
    telling: { tell: 'reminder', step },
    urgent: true,
    key: `reminder:${key}`,
  }));
  const names = managers(harvest.roster).map(({ id }): Tell => ({
    audience: person(id),
    telling: { tell: 'unseen', notice: { step, seen, unseen } },
    urgent: true,
    key: `not-confirmed:${key}`,
  }));
  return [...(nowMs >= remindMs ? reminders : []), ...(nowMs >= namesMs ? names : [])];
};

/**
 * What is due by `nowMs`, and when something is due next. Advice, a watch and an all-clear need no confirmation. The same
 * reminder has the same key, so that calling this again repeats nothing.
 */
export const confirmations = (
  harvest: Harvest,
  clock: ZoneClock,
  nowMs: EpochMs,
): { tells: Tell[]; wakeAtMs: EpochMs | null } => {
  const asked = harvest.notices.flatMap((event) => {
    const orderedMs = orderMs(newestStep(event));
    if (orderedMs === null) return [];
    const due: ReminderDue = {
      remindMs: awakeMs(harvest, clock, addMinutes(orderedMs, REMIND_MIN)),
      namesMs: awakeMs(harvest, clock, addMinutes(orderedMs, NAMES_MIN)),
    };
    return nowMs <= addMinutes(due.namesMs, LATEST_REMINDER_MIN) ? [{ event, due }] : [];
  });
  const wakes = asked.flatMap(({ due }) => [due.remindMs, due.namesMs]).filter((ms) => ms > nowMs);
  return {
    tells: asked.flatMap(({ event, due }) => tellsFor(event, due, harvest, nowMs)),
    wakeAtMs: wakes.length > 0 ? Math.min(...wakes) : null,
  };
};
