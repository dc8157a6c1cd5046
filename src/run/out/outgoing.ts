/** Tells -> messages for the outbox, in the language of whom they are for. */
import { tellsOf } from '../../core/notices/tells.ts';
import type { Fact } from '../../core/book/facts.ts';
import { LOCAL, addressesOf, personById } from '../../core/roster.ts';
import type { CrewMember, Language, Roster } from '../../core/roster.ts';
import type { Tell, Telling } from '../../core/telling.ts';
import type { EpochMs } from '../../core/units.ts';
import { addMinutes } from '../../core/units.ts';
import type { Said } from '../../ports/chat.ts';
import type { Outgoing, Recipient } from '../../ports/outbox.ts';
import { dataOf } from '../../saying/data.ts';
import { say, sayToRoom } from '../../saying/say.ts';
import { kindOf } from '../../saying/tellings/index.ts';
import type { Voice } from '../../saying/voice.ts';
import { boardSlot } from './boards.ts';
import type { Running } from '../host/operation.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';

/** Where a message came from, for answers to it. */
export interface Origin {
  platform: string;
  /** The crew's room by our name, or null = written to the bot alone. */
  room: { id: string; room: string } | null;
  user: string;
  person: CrewMember | null;
  messageId: string;
}

interface Destination {
  recipient: Recipient;
  platform: string;
  to: Outgoing['to'];
  languages: readonly Language[];
  repliesTo: string | null;
  /** Tells the messages to one recipient over several platforms apart. */
  keyed: string;
}

const expires = (telling: Telling, nowMs: EpochMs): EpochMs | null => {
  const { holdsMin } = kindOf(telling);
  return holdsMin === null ? null : addMinutes(nowMs, holdsMin);
};

/** The crew's languages, the one of most people first. */
const languagesOf = (roster: Roster): Language[] => {
  const count = (language: Language): number =>
    roster.people.filter((person) => person.language === language).length;
  const languages: Language[] = ['en', 'es'];
  return languages.filter((language) => count(language) > 0).sort((a, b) => count(b) - count(a));
};

const toAsker = (origin: Origin): Destination => {
  const { platform, room, user, person, messageId } = origin;
  return {
    recipient: room ? { room: room.id } : { person: person?.id ?? user },
    platform,
    to: room ? { room: room.room } : { user },
    languages: [person?.language ?? 'en'],
    repliesTo: messageId,
    keyed: '',
  };
};

/** What is urgent goes to every address of the person: nobody knows which phone is in the cab. The rest to the first. */
const toPerson = (id: string, urgent: boolean, harvest: Harvest, running: Running): Destination[] => {
  const person = personById(harvest.roster, id);
  const addresses = person ? addressesOf(person, running.platforms) : [];
  if (!person || addresses.length === 0) {
    running.log.warn(
      { person: id, platforms: running.platforms },
      'This person cannot be reached: no address on a platform in use',
    );
    return [];
  }
  return (urgent ? addresses : addresses.slice(0, 1)).map(({ platform, user }, at) => ({
    recipient: { person: id },
    platform,
    to: { user },
    languages: [person.language],
    repliesTo: null,
    keyed: at === 0 ? '' : `@${platform}`,
  }));
};

const toRoom = (id: string, harvest: Harvest, running: Running): Destination | null => {
  const room = harvest.roster.rooms.find((known) => known.id === id);
  if (!room) return null;
  const platform = running.platforms.includes(room.platform) ? room.platform : LOCAL;
  if (!running.platforms.includes(platform)) return null;
  const to = { room: platform === LOCAL ? room.id : room.room };
  const languages = languagesOf(harvest.roster);
  return {
    recipient: { room: id },
    platform,
    to,
    languages: languages.length > 0 ? languages : ['en'],
    repliesTo: null,
    keyed: '',
  };
};

const destinations = (
  { audience, urgent }: Tell,
  origin: Origin | null,
  harvest: Harvest,
  running: Running,
): Destination[] => {
  switch (audience.to) {
    case 'asker':
      return origin ? [toAsker(origin)] : [];
    case 'person':
      return toPerson(audience.person, urgent, harvest, running);
    case 'room':
      return [toRoom(audience.room, harvest, running) ?? []].flat();
  }
};

const sayTo = (
  telling: Telling,
  destined: Destination,
  harvest: Harvest,
  running: Running,
  nowMs: EpochMs,
): Said => {
  const { roster } = harvest;
  const [first, ...others] = destined.languages.map((language): Voice => ({
    language,
    roster,
    clock: running.clock,
    nowMs,
    zone: roster.zone,
  }));
  if (!first) throw new Error('A message needs a language.');
  return 'room' in destined.recipient ? sayToRoom(telling, [first, ...others]) : say(telling, first);
};

/** What rests on a forecast names its source, where the source asks for that. */
const withSource = (said: Said, telling: Telling, weatherBy: string | null): Said =>
  weatherBy !== null && kindOf(telling).restsOnForecast
    ? { ...said, text: `${said.text}\n${weatherBy}` }
    : said;

/** The messages that these tells come to. One that reaches nobody is logged and left out. */
export const outgoing = (
  tells: readonly Tell[],
  cause: string,
  origin: Origin | null,
  harvest: Harvest,
  running: Running,
  nowMs: EpochMs,
): Outgoing[] =>
  tells.flatMap((tell) =>
    destinations(tell, origin, harvest, running).map((destined): Outgoing => {
      const { recipient, platform, to, languages, repliesTo, keyed } = destined;
      return {
        key: `${tell.key}:${JSON.stringify(recipient)}${keyed}`,
        recipient,
        platform,
        to,
        kind: tell.telling.tell,
        cause,
        data: dataOf(tell.telling, running.iso),
        said: withSource(
          sayTo(tell.telling, destined, harvest, running, nowMs),
          tell.telling,
          running.weatherBy,
        ),
        repliesTo,
        slot: tell.telling.tell === 'board' ? boardSlot(platform, languages[0] ?? 'en', cause) : null,
        urgent: tell.urgent,
        notBeforeMs: nowMs,
        expiresMs: expires(tell.telling, nowMs),
      };
    }),
  );

/** The messages that new facts of the bot itself come to, each under its own cause. */
export const outgoingOf = (
  facts: readonly Fact[],
  harvest: Harvest,
  running: Running,
  nowMs: EpochMs,
): Outgoing[] =>
  facts.flatMap((fact) =>
    outgoing(tellsOf(fact, harvest, running.clock), fact.cause, null, harvest, running, nowMs),
  );
