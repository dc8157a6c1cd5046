/** Who is told of a step of a stop, how, and for whom a phone rings. */
import { movesRestartOnly } from '../book/facts.ts';
import type { FactOf, NoticeStep } from '../book/facts.ts';
import type { Harvest, NoticeEvent } from '../harvest/harvest.ts';
import type { CrewMember } from '../roster.ts';
import { managers, mayManage } from '../roster.ts';
import type { Audience, Tell, Telling } from '../telling.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { actingOn, onShift } from './acting.ts';
import { managersOf, roomsOf, tellAll } from './audiences.ts';
import { isOrdered, newestStep, notSeen, orderOf, rainFor, unendedNotices } from './notices.ts';
import type { RaisedStep, StandingOrder } from './notices.ts';
import { wasOrdered } from './orders.ts';
import { isAsleep } from './quiet.ts';
import type { Moment } from './shifts.ts';

/** A step of a stop, at the moment at which it is told. */
interface TellingOf extends Moment {
  raised: RaisedStep;
  event: NoticeEvent;
  /** A later time, which changes the message of those who have it and rings nowhere. */
  isChange: boolean;
}

/** An order of a person wakes people at night when it begins so soon. Grade: chosen. */
const SOON_MIN: Minutes = 120;

/** It is worth a phone's ringing: not a watch nor its end. */
const isLoud = ({ raised: { step }, isChange }: TellingOf, changed: NoticeStep | null): boolean => {
  const isEndOfWatch = step.stage === 'all-clear' && changed?.stage === 'watch';
  return !isChange && step.stage !== 'watch' && !isEndOfWatch;
};

/** Whoever sleeps is woken only by a person's order that begins soon. */
const wakes = (of: TellingOf, person: CrewMember): boolean => {
  const { step, heardMs } = of.raised;
  const isPersons = step.source !== 'forecast' && step.stage !== 'all-clear';
  const isSoon = (step.stopToppingMs ?? heardMs) <= addMinutes(heardMs, SOON_MIN);
  return (isPersons && isSoon) || !isAsleep(of, person);
};

/** The stops that an all-clear does not end. */
const othersThan = (event: string, harvest: Harvest, nowMs: EpochMs): NoticeStep[] =>
  unendedNotices(harvest, nowMs).flatMap((other) => (other.event === event ? [] : [newestStep(other).step]));

type NoticeTelling = Extract<Telling, { tell: 'notice' }>;

/** Nobody is told that only who ordered it has seen it. */
const confirmedOf = (of: TellingOf): NoticeTelling['confirmed'] => {
  const { seen, unseen } = notSeen(of.event, of);
  const isOwn = seen.every((id) => id === of.raised.by);
  return isOwn || !isOrdered(of.event, of.nowMs) ? null : { seen, unseen };
};

const noticeTelling = (of: TellingOf): NoticeTelling => {
  const { raised, event, harvest, nowMs } = of;
  const { step, by } = raised;
  const changed = event.steps.findLast((known) => known.step.number < step.number)?.step ?? null;
  return {
    tell: 'notice',
    step,
    by,
    changed,
    rain: rainFor(step, harvest, nowMs),
    still: step.stage === 'all-clear' ? othersThan(step.event, harvest, nowMs) : [],
    order: isOrdered(event, nowMs) && !movesRestartOnly(step),
    asked: orderOf(event)?.askedNumber ?? step.number,
    confirmed: confirmedOf(of),
    rings: isLoud(of, changed),
  };
};

/** Those who must act or decide are told of an order, and of the end of what was ordered; a restart that moves is no order. */
const concernsActing = ({ raised: { step }, event, nowMs }: TellingOf): boolean =>
  step.stage === 'all-clear'
    ? step.source === 'person' || wasOrdered(event, step.number, nowMs)
    : isOrdered(event, nowMs) && !movesRestartOnly(step);

const silent = (telling: NoticeTelling): NoticeTelling => ({ ...telling, rings: false });

const toPerson = (of: TellingOf, person: CrewMember, telling: NoticeTelling, key: string): Tell => ({
  audience: { to: 'person', person: person.id },
  telling: { ...telling, rings: telling.rings && wakes(of, person) },
  urgent: true,
  key,
});

/** To the rooms without ringing, and by direct message to those who must act and decide; without a room to everybody. */
const orderTells = (of: TellingOf, telling: NoticeTelling, key: string): Tell[] => {
  const rooms = roomsOf(of.harvest.roster);
  const acting = actingOn(of);
  const told = onShift(of).filter(
    (person) => rooms.length === 0 || acting.includes(person) || mayManage(person),
  );
  return [
    ...tellAll(rooms, silent(telling), key, true),
    ...told.map((person) => toPerson(of, person, acting.includes(person) ? telling : silent(telling), key)),
  ];
};

/** Advice goes to the rooms, where nobody's phone rings, and to foreman and grower; without a room to everybody. */
const adviceTells = (of: TellingOf, telling: NoticeTelling, key: string): Tell[] => {
  const { roster } = of.harvest;
  const rooms = roomsOf(roster);
  const isEnd = telling.step.stage === 'all-clear';
  const told = rooms.length === 0 ? onShift(of) : managers(roster);
  return [
    ...tellAll(rooms, silent(telling), key, true),
    ...told.map((person) =>
      toPerson(of, person, isEnd || rooms.length === 0 ? silent(telling) : telling, key),
    ),
  ];
};

const stepTells = (of: TellingOf, key: string): Tell[] => {
  const telling = noticeTelling(of);
  return concernsActing(of) ? orderTells(of, telling, key) : adviceTells(of, telling, key);
};

const ofNewest = (event: NoticeEvent, harvest: Harvest, clock: ZoneClock, nowMs: EpochMs): TellingOf => ({
  raised: newestStep(event),
  event,
  harvest,
  clock,
  nowMs,
  isChange: false,
});

/** A step is told once as advice, and once as an order. */
const orderKey = ({ step, orderedMs }: StandingOrder, { heardMs }: RaisedStep): string =>
  `${orderedMs > heardMs ? 'order' : 'notice'}:${step.event}:${step.number}`;

export const noticeTells = (fact: FactOf<'notice-raised'>, harvest: Harvest, clock: ZoneClock): Tell[] => {
  const { step, heardMs } = fact;
  const event = harvest.notices.find((known) => known.event === step.event);
  if (event === undefined) return [];
  const isChange = (orderOf(event)?.askedNumber ?? step.number) < step.number;
  const of = { raised: fact, event, harvest, clock, nowMs: heardMs, isChange };
  return stepTells(of, `notice:${step.event}:${step.number}`);
};

/** Advice has become an order. */
export const orderedTells = (
  event: NoticeEvent,
  harvest: Harvest,
  clock: ZoneClock,
  nowMs: EpochMs,
): Tell[] => {
  const order = orderOf(event);
  return order === null
    ? []
    : stepTells(ofNewest(event, harvest, clock, nowMs), orderKey(order, newestStep(event)));
};

/** The orders that somebody has confirmed since, as they must now be shown to rooms, foreman and grower. */
export const confirmedTells = (
  before: Harvest,
  { harvest, clock, nowMs }: Moment,
  key: string,
): { telling: NoticeTelling; tells: Tell[] }[] =>
  harvest.notices.flatMap((event) => {
    const known = before.notices.find((one) => one.event === event.event);
    const isSeenBy = known?.steps.length === event.steps.length && known.seen.size < event.seen.size;
    if (!isSeenBy || !isOrdered(event, nowMs)) return [];
    const telling = silent(noticeTelling(ofNewest(event, harvest, clock, nowMs)));
    const audiences = [...roomsOf(harvest.roster), ...managersOf(harvest.roster)];
    return [{ telling, tells: tellAll(audiences, telling, `seen:${event.event}:${key}`, true) }];
  });

/** Who is not rung for an order gets it beside the next answer: it has the key of the order, so that nobody gets it twice. */
export const nextAnswerTells = (
  person: CrewMember,
  harvest: Harvest,
  clock: ZoneClock,
  nowMs: EpochMs,
): Tell[] =>
  harvest.notices.flatMap((event) => {
    const order = orderOf(event);
    if (order === null || order.orderedMs > nowMs || event.seen.has(person.id)) return [];
    const of = ofNewest(event, harvest, clock, nowMs);
    return [toPerson(of, person, silent(noticeTelling(of)), orderKey(order, of.raised))];
  });

/** A room that is new to the crew hears what holds the dig, or will. */
export const roomTells = (
  { change, id, heardMs }: FactOf<'list-changed'>,
  harvest: Harvest,
  clock: ZoneClock,
): Tell[] => {
  if (change.list !== 'rooms' || 'remove' in change) return [];
  const audience: Audience = { to: 'room', room: change.put.id };
  return unendedNotices(harvest, heardMs).flatMap((event) => {
    const telling = noticeTelling(ofNewest(event, harvest, clock, heardMs));
    return tellAll([audience], { ...telling, rings: false }, `notice:${event.event}:${id}`, true);
  });
};
