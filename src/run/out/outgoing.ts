/** Tells -> messages for the outbox, in the language of whom they are for. */
import { tellsOf } from '../../core/notices/tells.ts';
import type { Fact } from '../../core/book/facts.ts';
import { LOCAL, addressesOf, crewLanguages, personById } from '../../core/roster.ts';
import type { CrewMember, Language, Roster } from '../../core/roster.ts';
import type { Tell, Telling } from '../../core/telling.ts';
import type { EpochMs } from '../../core/units.ts';
import { addMinutes } from '../../core/units.ts';
import { reasonOf } from '../../core/reason.ts';
import { undeliveredTells } from '../../core/notices/undelivered.ts';
import type { Said } from '../../ports/chat.ts';
import type { MessagePlace } from '../../ports/book.ts';
import type { Outgoing, Recipient } from '../../ports/outbox.ts';
import { dataOf } from '../../saying/data.ts';
import { say, sayToRoom } from '../../saying/say.ts';
import { kindOf } from '../../saying/tellings/index.ts';
import type { Voice } from '../../saying/voice.ts';
import { boardSlotText } from './board-slot.ts';
import { noticeSlot } from './notice-slot.ts';
import type { Sayer } from '../host/bot.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';

/** Where a message came from, and from whom; `person` null = nobody of the crew. */
export interface Origin extends MessagePlace {
  person: CrewMember | null;
}

/** What messages are sent for, and when. */
export interface Occasion {
  cause: string;
  /** The message that is answered; null = none is. */
  origin: Origin | null;
  harvest: Harvest;
  nowMs: EpochMs;
}

interface Destination {
  recipient: Recipient;
  platform: string;
  to: Outgoing['to'];
  languages: readonly [Language, ...Language[]];
  repliesTo: string | null;
  /** Tells the messages to one recipient over several platforms apart. */
  keyed: string;
}

const expires = (telling: Telling, nowMs: EpochMs): EpochMs | null => {
  const { holdsMin } = kindOf(telling);
  return holdsMin === null ? null : addMinutes(nowMs, holdsMin);
};

const toAsker = (origin: Origin, roster: Roster): Destination => {
  const { platform, room, user, person, messageId } = origin;
  return {
    recipient: room ? { room: room.id } : { person: person?.id ?? user },
    platform,
    to: room ? { room: room.room } : { user },
    languages: person === null ? [crewLanguages(roster)[0]] : [person.language],
    repliesTo: messageId,
    keyed: '',
  };
};

/** What is urgent goes to every address of the person: nobody knows which phone is in the cab. The rest to the first. */
const toPerson = (id: string, urgent: boolean, harvest: Harvest, bot: Sayer): Destination[] => {
  const person = personById(harvest.roster, id);
  const addresses = person ? addressesOf(person, bot.platforms) : [];
  if (!person || addresses.length === 0) {
    bot.log.warn(
      { person: id, platforms: bot.platforms },
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

const toRoom = (id: string, harvest: Harvest, bot: Sayer): Destination | null => {
  const room = harvest.roster.rooms.find((known) => known.id === id);
  if (!room) return null;
  const platform = bot.platforms.includes(room.platform) ? room.platform : LOCAL;
  if (!bot.platforms.includes(platform)) return null;
  const to = { room: platform === LOCAL ? room.id : room.room };
  return {
    recipient: { room: id },
    platform,
    to,
    languages: crewLanguages(harvest.roster),
    repliesTo: null,
    keyed: '',
  };
};

const destinations = (
  { audience, urgent }: Tell,
  { origin, harvest }: Occasion,
  bot: Sayer,
): Destination[] => {
  switch (audience.to) {
    case 'asker':
      return origin ? [toAsker(origin, harvest.roster)] : [];
    case 'person':
      return toPerson(audience.person, urgent, harvest, bot);
    case 'room':
      return [toRoom(audience.room, harvest, bot) ?? []].flat();
  }
};

const sayTo = (
  telling: Telling,
  { recipient, languages }: Destination,
  { harvest, nowMs }: Occasion,
  { clock }: Sayer,
): Said => {
  const { roster } = harvest;
  const { zone } = roster;
  const voiceIn = (language: Language): Voice => ({ language, roster, clock, nowMs, zone });
  return 'room' in recipient
    ? sayToRoom(telling, languages.map(voiceIn))
    : say(telling, voiceIn(languages[0]));
};

/** What rests on a forecast names its source, where the source asks for that. */
const withSource = (said: Said, telling: Telling, weatherBy: string | null): Said =>
  weatherBy !== null && kindOf(telling).restsOnForecast
    ? { ...said, text: `${said.text}\n${weatherBy}` }
    : said;

const slotOf = (
  telling: Telling,
  { platform, languages: [language] }: Destination,
  { cause }: Occasion,
  { editable }: Sayer,
): string | null => {
  if (telling.tell === 'notice') return noticeSlot(telling);
  return telling.tell === 'board' && editable.includes(platform) ? boardSlotText({ language, cause }) : null;
};

const messageTo = (destined: Destination, tell: Tell, occasion: Occasion, bot: Sayer): Outgoing => {
  const { recipient, platform, to, repliesTo, keyed } = destined;
  const { key, telling, urgent } = tell;
  const { cause, nowMs } = occasion;
  return {
    key: `${key}:${JSON.stringify(recipient)}${keyed}`,
    recipient,
    platform,
    to,
    kind: telling.tell,
    cause,
    data: dataOf(telling, bot.iso),
    said: withSource(sayTo(telling, destined, occasion, bot), telling, bot.weatherBy),
    repliesTo,
    slot: slotOf(telling, destined, occasion, bot),
    urgent,
    notBeforeMs: nowMs,
    expiresMs: expires(telling, nowMs),
  };
};

const holdsNotice = (tells: readonly Tell[]): boolean =>
  tells.some(({ telling }) => telling.tell === 'notice');

/** Beside a notice, a message that cannot be put into words is left out, so that it holds up no stop. */
const messagesOf = (
  tell: Tell,
  destined: Destination,
  occasion: Occasion,
  bot: Sayer,
  mayFail: boolean,
): Outgoing[] => {
  try {
    return [messageTo(destined, tell, occasion, bot)];
  } catch (error) {
    if (!mayFail) throw error;
    const { key, telling } = tell;
    bot.log.error({ key, tell: telling.tell, why: reasonOf(error) }, 'A message could not be put into words');
    return [];
  }
};

/** A notice that has nowhere to go is told to foreman and grower instead. */
const unreached = ({ audience, telling }: Tell, { harvest, nowMs }: Occasion, { clock }: Sayer): Tell[] => {
  if (telling.tell !== 'notice' || audience.to === 'asker') return [];
  const to = audience.to === 'person' ? { person: audience.person } : { room: audience.room };
  return undeliveredTells({ harvest, clock, nowMs }, telling.step, to, null);
};

/** The messages that these tells come to. One that reaches nobody is logged and left out. */
export const outgoing = (tells: readonly Tell[], occasion: Occasion, bot: Sayer): Outgoing[] => {
  const mayFail = holdsNotice(tells);
  return tells.flatMap((tell) => {
    const places = destinations(tell, occasion, bot);
    const instead = places.length === 0 ? unreached(tell, occasion, bot) : [];
    return [
      ...places.flatMap((destined) => messagesOf(tell, destined, occasion, bot, mayFail)),
      ...outgoing(instead, occasion, bot),
    ];
  });
};

/** The messages that new facts of the bot itself come to, each under its own cause. */
export const outgoingOf = (
  facts: readonly Fact[],
  harvest: Harvest,
  nowMs: EpochMs,
  bot: Sayer,
): Outgoing[] =>
  facts.flatMap((fact) => {
    const occasion = { cause: fact.cause, origin: null, harvest, nowMs };
    return outgoing(tellsOf(fact, harvest, bot.clock), occasion, bot);
  });
