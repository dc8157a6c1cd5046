/** What follows from new facts, and from time passing: notices to be raised, and who must be told what. */
import { confirmations } from './confirmations.ts';
import { endDrills } from './drills.ts';
import type { Fact, FactOf } from '../book/facts.ts';
import { concernsOthers } from '../book/kinds.ts';
import { dueOrders } from './orders.ts';
import { promises } from './promises.ts';
import { passedTells } from './passed-words.ts';
import { personById } from '../roster.ts';
import type { PersonId } from '../roster.ts';
import type { Audience, Tell, Telling } from '../telling.ts';
import type { EpochMs } from '../units.ts';
import { lookAtWeather } from './weather-look.ts';
import type { ZoneClock } from '../zone-clock.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { managersOf, tellAll } from './audiences.ts';
import { noticeTells, orderedTells, roomTells } from './notice-tells.ts';
import { stillDiggingTells } from './still-digging.ts';
import { stationTells } from './station-news.ts';

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
      return [...downTells(fact, harvest), ...stillDiggingTells(fact, harvest)];
    case 'station-reported':
    case 'pilers-seen':
    case 'loads-turned-away':
      return stationTells(fact, harvest, clock);
    case 'words-passed':
      return passedTells(fact, harvest, clock);
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
  const promised = promises({ harvest, clock, nowMs });
  const orders = dueOrders(harvest, nowMs);
  const ordered = orders.due.flatMap((event) => orderedTells(event, harvest, clock, nowMs));
  const wakes = [weather, drills, asked, promised, orders].flatMap(({ wakeAtMs }) =>
    wakeAtMs === null ? [] : [wakeAtMs],
  );
  return {
    facts: [...weather.facts, ...drills.facts],
    tells: [...ordered, ...asked.tells, ...promised.tells],
    wakeAtMs: wakes.length > 0 ? Math.min(...wakes) : null,
  };
};
