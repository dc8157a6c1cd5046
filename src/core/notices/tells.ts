/** What follows from new facts, and from time passing: notices to be raised, and who must be told what. */
import { confirmations } from './confirmations.ts';
import { endDrills } from './drills.ts';
import type { Fact, FactOf, NoticeStep } from '../book/facts.ts';
import { concernsOthers } from '../book/kinds.ts';
import { newestStep, rainFor, unendedNotices } from './notices.ts';
import type { RaisedStep } from './notices.ts';
import { promises } from './promises.ts';
import { isQuiet } from './quiet.ts';
import { personById } from '../roster.ts';
import type { Audience, Tell, Telling } from '../telling.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import { lookAtWeather } from './weather-look.ts';
import type { ZoneClock } from '../zone-clock.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { crew, managersOf, tellAll } from './audiences.ts';

/** An order of a person wakes people at night when it begins so soon. Grade: chosen. */
const SOON_MIN: Minutes = 120;

/** A watch and its end never ring; at night, when nobody works, nothing does but a person's order that begins soon. */
const ringsFor = (
  { step, heardMs }: RaisedStep,
  changed: NoticeStep | null,
  harvest: Harvest,
  clock: ZoneClock,
): boolean => {
  if (step.stage === 'watch' || (step.stage === 'all-clear' && changed?.stage === 'watch')) return false;
  const isOrder = step.source !== 'forecast' && step.stage !== 'all-clear';
  const isSoon = (step.stopToppingMs ?? heardMs) <= addMinutes(heardMs, SOON_MIN);
  return (isOrder && isSoon) || !isQuiet(harvest, clock, heardMs);
};

/** The stops that an all-clear does not end. */
const othersThan = (event: string, harvest: Harvest, nowMs: EpochMs): NoticeStep[] =>
  unendedNotices(harvest, nowMs).flatMap((other) => (other.event === event ? [] : [newestStep(other).step]));

const noticeTelling = (raised: RaisedStep, harvest: Harvest, clock: ZoneClock): Telling => {
  const { step, by, heardMs } = raised;
  const event = harvest.notices.find((known) => known.event === step.event);
  const changed = event?.steps.findLast((known) => known.step.number < step.number)?.step ?? null;
  const rings = ringsFor(raised, changed, harvest, clock);
  const still = step.stage === 'all-clear' ? othersThan(step.event, harvest, heardMs) : [];
  return { tell: 'notice', step, by, changed, rain: rainFor(step, harvest, heardMs), still, rings };
};

const noticeTells = (fact: FactOf<'notice-raised'>, harvest: Harvest, clock: ZoneClock): Tell[] => {
  const { step, heardMs } = fact;
  const key = `notice:${step.event}:${step.number}`;
  return tellAll(crew(harvest, heardMs), noticeTelling(fact, harvest, clock), key, true);
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
      noticeTelling(newestStep(event), harvest, clock),
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

const downTells = (fact: FactOf<'truck-reported'>, harvest: Harvest): Tell[] => {
  if (fact.step !== 'down') return [];
  const { truck, words, by, atMs } = fact;
  const others = managersOf(harvest.roster).filter(
    (audience) => audience.to !== 'person' || audience.person !== by,
  );
  return tellAll(others, { tell: 'truck-down', truck, words, by, atMs }, `down:${fact.id}`, false);
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
  const wakes = [weather, drills, asked, promised].flatMap(({ wakeAtMs }) =>
    wakeAtMs === null ? [] : [wakeAtMs],
  );
  return {
    facts: [...weather.facts, ...drills.facts],
    tells: [...asked.tells, ...promised.tells],
    wakeAtMs: wakes.length > 0 ? Math.min(...wakes) : null,
  };
};
