/** What follows from new facts, and from time passing: notices to be raised, and who must be told what. */
import { confirmations } from './confirmations.ts';
import { endDrills } from './drills.ts';
import type { Fact, FactOf, NoticeStep } from '../book/facts.ts';
import { concernsOthers } from '../book/kinds.ts';
import { isOrder, newestStep, rainFor, unendedNotices } from './notices.ts';
import type { RaisedStep } from './notices.ts';
import { dueOrders, wasOrdered } from './orders.ts';
import { promises } from './promises.ts';
import { isQuiet } from './quiet.ts';
import { personById } from '../roster.ts';
import type { PersonId } from '../roster.ts';
import type { Audience, Tell, Telling } from '../telling.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import { lookAtWeather } from './weather-look.ts';
import type { ZoneClock } from '../zone-clock.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { crew, managersOf, tellAll } from './audiences.ts';

/** An order of a person wakes people at night when it begins so soon. Grade: chosen. */
const SOON_MIN: Minutes = 120;

/**
 * Advice and its end ring for nobody but foreman and grower, a watch for nobody; at night, when nobody works, nothing rings
 * but a person's order that begins soon.
 */
const ringsFor = (
  { step, heardMs }: RaisedStep,
  changed: NoticeStep | null,
  harvest: Harvest,
  clock: ZoneClock,
  nowMs: EpochMs,
): boolean => {
  if (step.stage === 'watch' || (step.stage === 'all-clear' && changed?.stage === 'watch')) return false;
  const isPersons = step.source !== 'forecast' && step.stage !== 'all-clear';
  const isSoon = (step.stopToppingMs ?? heardMs) <= addMinutes(heardMs, SOON_MIN);
  return (isPersons && isSoon) || !isQuiet(harvest, clock, nowMs);
};

/** The stops that an all-clear does not end. */
const othersThan = (event: string, harvest: Harvest, nowMs: EpochMs): NoticeStep[] =>
  unendedNotices(harvest, nowMs).flatMap((other) => (other.event === event ? [] : [newestStep(other).step]));

type NoticeTelling = Extract<Telling, { tell: 'notice' }>;

const noticeTelling = (
  raised: RaisedStep,
  harvest: Harvest,
  clock: ZoneClock,
  nowMs: EpochMs,
): NoticeTelling => {
  const { step, by } = raised;
  const event = harvest.notices.find((known) => known.event === step.event);
  const changed = event?.steps.findLast((known) => known.step.number < step.number)?.step ?? null;
  return {
    tell: 'notice',
    step,
    by,
    changed,
    rain: rainFor(step, harvest, nowMs),
    still: step.stage === 'all-clear' ? othersThan(step.event, harvest, nowMs) : [],
    order: isOrder(raised, nowMs),
    rings: ringsFor(raised, changed, harvest, clock, nowMs),
  };
};

/** The whole crew is concerned: by an order, and by the end of what was ordered. */
const concernsAll = (raised: RaisedStep, harvest: Harvest, nowMs: EpochMs): boolean => {
  const { step } = raised;
  if (step.stage !== 'all-clear') return isOrder(raised, nowMs);
  const event = harvest.notices.find((known) => known.event === step.event);
  return step.source === 'person' || (event !== undefined && wasOrdered(event, step.number, nowMs));
};

/** Advice goes to the rooms, where nobody's phone rings, and to foreman and grower; without a room to everybody. */
const adviceTells = (telling: NoticeTelling, key: string, harvest: Harvest, nowMs: EpochMs): Tell[] => {
  const silent = { ...telling, rings: false };
  const { rooms } = harvest.roster;
  if (rooms.length === 0) return tellAll(crew(harvest, nowMs), silent, key, true);
  const inRooms = rooms.map(({ id }): Audience => ({ to: 'room', room: id }));
  const isEnd = telling.step.stage === 'all-clear';
  return [
    ...tellAll(inRooms, silent, key, true),
    ...tellAll(managersOf(harvest.roster), isEnd ? silent : telling, key, true),
  ];
};

const stepTells = (
  raised: RaisedStep,
  key: string,
  harvest: Harvest,
  clock: ZoneClock,
  nowMs: EpochMs,
): Tell[] => {
  const telling = noticeTelling(raised, harvest, clock, nowMs);
  return concernsAll(raised, harvest, nowMs)
    ? tellAll(crew(harvest, nowMs), telling, key, true)
    : adviceTells(telling, key, harvest, nowMs);
};

const noticeTells = (fact: FactOf<'notice-raised'>, harvest: Harvest, clock: ZoneClock): Tell[] => {
  const { event, number } = fact.step;
  return stepTells(fact, `notice:${event}:${number}`, harvest, clock, fact.heardMs);
};

/** A room that is new to the crew hears what holds the dig, or will. */
const roomTells = (
  { change, id, heardMs }: FactOf<'list-changed'>,
  harvest: Harvest,
  clock: ZoneClock,
): Tell[] => {
  if (change.list !== 'rooms' || 'remove' in change) return [];
  const audience: Audience = { to: 'room', room: change.put.id };
  return unendedNotices(harvest, heardMs).flatMap((event) =>
    tellAll(
      [audience],
      noticeTelling(newestStep(event), harvest, clock, heardMs),
      `notice:${event.event}:${id}`,
      true,
    ),
  );
};

const emergencyTells = (fact: FactOf<'emergency-called'>, harvest: Harvest): Tell[] => {
  const person = fact.by === null ? undefined : personById(harvest.roster, fact.by);
  const telling: Telling = {
    tell: 'emergency',
    name: fact.caller,
    words: fact.words,
    truck: person?.truck ?? null,
    atMs: fact.atMs,
  };
  return tellAll(managersOf(harvest.roster), telling, `emergency:${fact.id}`, true);
};

/** Grower and foreman, but not the one who said it. */
const managersBut = (by: PersonId | null, harvest: Harvest): Audience[] =>
  managersOf(harvest.roster).filter((audience) => audience.to !== 'person' || audience.person !== by);

const downTells = (fact: FactOf<'truck-reported'>, harvest: Harvest): Tell[] => {
  if (fact.step !== 'down') return [];
  const { truck, words, by, atMs } = fact;
  const telling: Telling = { tell: 'truck-down', truck, words, by, atMs };
  return tellAll(managersBut(by, harvest), telling, `down:${fact.id}`, false);
};

const machineTells = (fact: FactOf<'machine-reported'>, harvest: Harvest): Tell[] => {
  const { machine, runs, untilMs, words, by, atMs } = fact;
  const telling: Telling = { tell: 'machine', machine, runs, untilMs, words, by, atMs };
  return tellAll(managersBut(by, harvest), telling, `machine:${fact.id}`, false);
};

const lineTelling = ({ station, warning }: FactOf<'line-warned'>): Telling | null => {
  switch (warning.about) {
    case 'limit':
      return warning.above ? { tell: 'line-limit', station, ...warning } : null;
    case 'stopped':
      return { tell: 'line-stopped', station, ...warning };
  }
};

const lineTells = (fact: FactOf<'line-warned'>, harvest: Harvest): Tell[] => {
  const telling = lineTelling(fact);
  return telling === null ? [] : tellAll(managersOf(harvest.roster), telling, fact.id, false);
};

const forecastTells = ({ id, place, missing }: FactOf<'forecast-warned'>, harvest: Harvest): Tell[] => {
  const telling: Telling =
    missing === null
      ? { tell: 'forecast-back', station: place }
      : { tell: 'no-forecast', station: place, missing };
  return tellAll(managersOf(harvest.roster), telling, id, false);
};

/** Whom a new fact concerns, besides the one who said it. */
export const tellsOf = (fact: Fact, harvest: Harvest, clock: ZoneClock): Tell[] => {
  if (!concernsOthers(fact)) return [];
  switch (fact.kind) {
    case 'notice-raised':
      return noticeTells(fact, harvest, clock);
    case 'emergency-called':
      return emergencyTells(fact, harvest);
    case 'truck-reported':
      return downTells(fact, harvest);
    case 'machine-reported':
      return machineTells(fact, harvest);
    case 'line-warned':
      return lineTells(fact, harvest);
    case 'forecast-warned':
      return forecastTells(fact, harvest);
    case 'list-changed':
      return roomTells(fact, harvest, clock);
    case 'stranger-heard': {
      const { platform, user } = fact;
      return tellAll(
        managersOf(harvest.roster),
        { tell: 'stranger', name: user, platform, user },
        `stranger:${fact.id}`,
        false,
      );
    }
  }
};

/** What time brings: steps of notices, reminders of those that nobody confirmed, and when to look again. */
export const timePasses = (
  harvest: Harvest,
  clock: ZoneClock,
  nowMs: EpochMs,
): { facts: Fact[]; tells: Tell[]; wakeAtMs: EpochMs | null } => {
  const weather = lookAtWeather(harvest, clock, nowMs);
  const drills = endDrills(harvest, nowMs);
  const asked = confirmations(harvest, clock, nowMs);
  const promised = promises(harvest, clock, nowMs);
  const orders = dueOrders(harvest, nowMs);
  const ordered = orders.due.flatMap((raised) =>
    stepTells(raised, `order:${raised.step.event}:${raised.step.number}`, harvest, clock, nowMs),
  );
  const wakes = [weather, drills, asked, promised, orders].flatMap(({ wakeAtMs }) =>
    wakeAtMs === null ? [] : [wakeAtMs],
  );
  return {
    facts: [...weather.facts, ...drills.facts],
    tells: [...ordered, ...asked.tells, ...promised.tells],
    wakeAtMs: wakes.length > 0 ? Math.min(...wakes) : null,
  };
};
