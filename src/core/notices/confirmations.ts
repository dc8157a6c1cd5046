/**
 * Those who must act and have not said "got it" to an order are reminded once, in time before the topper must stop; then
 * the foreman gets their names, then the grower. An order for at once is asked about faster.
 */
import { actingOn, foremenOn } from './acting.ts';
import { ASKED_AFTER_MIN, ASKED_AHEAD_MIN, LATEST_ASKING_MIN } from './assumptions.ts';
import { notSeen, orderOf } from './notices.ts';
import type { StandingOrder } from './notices.ts';
import { awakeMs, personAwakeMs } from './quiet.ts';
import type { Moment } from './shifts.ts';
import type { CrewMember } from '../roster.ts';
import type { Tell, Telling } from '../telling.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs } from '../units.ts';
import type { ZoneClock } from '../zone-clock.ts';
import type { NoticeEvent, Harvest } from '../harvest/harvest.ts';

/** One message that is due to one person from `fromMs` on. */
interface Due {
  fromMs: EpochMs;
  toMs: EpochMs;
  tell: Tell;
}

type Rung = keyof typeof ASKED_AHEAD_MIN;

/** So long before the topper must stop; with less than an hour left not at once, but a while after the order. */
const rungMs = ({ step, orderedMs }: StandingOrder, rung: Rung): EpochMs =>
  Math.max(
    addMinutes(step.stopToppingMs ?? orderedMs, 0 - ASKED_AHEAD_MIN[rung]),
    addMinutes(orderedMs, ASKED_AFTER_MIN[rung]),
  );

const keyOf = (telling: Telling, { step, askedNumber }: StandingOrder): string =>
  `${telling.tell === 'reminder' ? 'reminder' : 'not-confirmed'}:${step.event}:${askedNumber}`;

/** The same reminder has the same key, so that asking again repeats nothing. */
const due = (person: CrewMember, telling: Telling, order: StandingOrder, fromMs: EpochMs): Due => ({
  fromMs,
  toMs: Math.max(order.step.stopToppingMs ?? fromMs, addMinutes(fromMs, LATEST_ASKING_MIN)),
  tell: { audience: { to: 'person', person: person.id }, telling, urgent: true, key: keyOf(telling, order) },
});

/** A reminder rings, so whoever sleeps gets it in the morning; names ring nowhere. */
const askedOf = (event: NoticeEvent, moment: Moment): Due[] => {
  const { harvest, clock } = moment;
  const order = orderOf(event);
  const missing = actingOn(moment).filter(({ id }) => !event.seen.has(id));
  if (order === null || missing.length === 0) return [];
  const reminder: Telling = { tell: 'reminder', step: order.step };
  const notice = { step: order.step, ...notSeen(event, moment) };
  const names: Telling = { tell: 'unseen', notice, undelivered: [] };
  // Who alone is missing has nobody to call.
  const callers = foremenOn(moment).filter(({ id }) => notice.unseen.some((other) => other !== id));
  const growers = harvest.roster.people.filter(({ roles }) => roles.includes('grower'));
  const namesMs = (rung: Rung): EpochMs => awakeMs(harvest, clock, rungMs(order, rung));
  return [
    ...missing.map((person) => {
      const nowMs = rungMs(order, 'remind');
      return due(person, reminder, order, personAwakeMs({ ...moment, nowMs }, person));
    }),
    ...(callers.length > 0 ? callers : growers).map((person) =>
      due(person, names, order, namesMs('foreman')),
    ),
    ...growers.map((person) => due(person, names, order, namesMs('grower'))),
  ];
};

/** Everybody who is asked sleeps: there is nobody to name. */
const namesNobody = ({ tell: { telling } }: Due): boolean =>
  telling.tell === 'unseen' && telling.notice.unseen.length === 0;

const idOf = ({ tell: { audience, key } }: Due): string => `${key} ${JSON.stringify(audience)}`;

/** A grower who is the foreman too gets the names once. */
const isFirst = (due: Due, at: number, all: readonly Due[]): boolean =>
  all.findIndex((other) => idOf(other) === idOf(due)) === at;

/** What is due by `nowMs`, and when something is due next. Advice, a watch and an all-clear need no confirmation. */
export const confirmations = (
  harvest: Harvest,
  clock: ZoneClock,
  nowMs: EpochMs,
): { tells: Tell[]; wakeAtMs: EpochMs | null } => {
  const all = harvest.notices.flatMap((event) => askedOf(event, { harvest, clock, nowMs }));
  const wakes = all.map(({ fromMs }) => fromMs).filter((ms) => ms > nowMs);
  return {
    tells: all
      .filter(({ fromMs, toMs }) => fromMs <= nowMs && nowMs <= toMs)
      .filter((one, at, dueNow) => !namesNobody(one) && isFirst(one, at, dueNow))
      .map(({ tell }) => tell),
    wakeAtMs: wakes.length > 0 ? Math.min(...wakes) : null,
  };
};
