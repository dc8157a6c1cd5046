/**
 * Those who must act and have not said "got it" to an order are reminded once, in time before the topper must stop; then
 * the foreman gets their names, then the grower. An order for at once is asked about faster.
 */
import { foremenOn } from './acting.ts';
import { ASKED_AFTER_MIN, ASKED_AHEAD_MIN, LATEST_ASKING_MIN } from './assumptions.ts';
import { notSeen, orderOf } from './notices.ts';
import type { Order, UnseenNotice } from './notices.ts';
import { awakeMs } from './quiet.ts';
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
const rungMs = ({ step, orderedMs }: Order, rung: Rung): EpochMs =>
  Math.max(
    addMinutes(step.stopToppingMs ?? orderedMs, 0 - ASKED_AHEAD_MIN[rung]),
    addMinutes(orderedMs, ASKED_AFTER_MIN[rung]),
  );

const keyOf = (telling: Telling, { step, askedNumber }: Order): string =>
  `${telling.tell === 'reminder' ? 'reminder' : 'not-confirmed'}:${step.event}:${askedNumber}`;

interface Asking {
  harvest: Harvest;
  clock: ZoneClock;
  nowMs: EpochMs;
}

/** The same reminder has the same key, so that asking again repeats nothing. */
const dueTo = (
  people: readonly CrewMember[],
  rung: Rung,
  telling: Telling,
  order: Order,
  asking: Asking,
): Due[] =>
  people.map(({ id }) => {
    const fromMs = awakeMs(asking.harvest, asking.clock, rungMs(order, rung));
    return {
      fromMs,
      toMs: Math.max(order.step.stopToppingMs ?? fromMs, addMinutes(fromMs, LATEST_ASKING_MIN)),
      tell: {
        audience: { to: 'person', person: id },
        telling,
        urgent: true,
        key: keyOf(telling, order),
      },
    };
  });

const askedOf = (event: NoticeEvent, asking: Asking): Due[] => {
  const { harvest, nowMs } = asking;
  const order = orderOf(event);
  if (order === null) return [];
  const notice: UnseenNotice = { step: order.step, ...notSeen(event, harvest, nowMs) };
  if (notice.unseen.length === 0) return [];
  const { people } = harvest.roster;
  const missing = people.filter(({ id }) => notice.unseen.includes(id));
  const growers = people.filter(({ roles }) => roles.includes('grower'));
  const names: Telling = { tell: 'unseen', notice };
  return [
    ...dueTo(missing, 'remind', { tell: 'reminder', step: order.step }, order, asking),
    ...dueTo(foremenOn(harvest, nowMs), 'foreman', names, order, asking),
    ...dueTo(growers, 'grower', names, order, asking),
  ];
};

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
      .filter(isFirst)
      .map(({ tell }) => tell),
    wakeAtMs: wakes.length > 0 ? Math.min(...wakes) : null,
  };
};
