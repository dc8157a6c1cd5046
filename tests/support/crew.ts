/** A day told by the crew: who says what where and when, and what the bot says to whom. All on 2026-10-20 in Idaho. */
import { afterAll, beforeAll, beforeEach } from 'vitest';
import { operateOn } from '../../src/command/operate.ts';
import type { Roster } from '../../src/core/roster.ts';
import type { Fahrenheit } from '../../src/core/units.ts';
import type { Heard, PostResult } from '../../src/ports/chat.ts';
import type { Claimed } from '../../src/ports/outbox.ts';
import { deliver } from '../../src/run/out/deliver.ts';
import { reporting } from '../../src/run/out/undelivered.ts';
import { hear } from '../../src/run/in/hear.ts';
import type { Bot } from '../../src/run/host/bot.ts';
import { hearForecast } from '../../src/run/in/hear-forecast.ts';
import type { ForecastHeard } from '../../src/run/in/hear-forecast.ts';
import { tick } from '../../src/run/time/tick.ts';
import { freshDatabase } from './database.ts';
import type { Database } from '../../src/store/database.ts';
import { storeOver } from '../../src/store/open.ts';
import { at } from './given.ts';
import { sampleRoster } from './roster.ts';

export { at } from './given.ts';

interface Given {
  roster: Roster;
  /** Means of the shell in place of the usual ones: a clock that fails, other platforms. */
  bot: Partial<Bot>;
  /** Where the crew writes. */
  platform: string;
  /** What becomes of a message; null = it is delivered. */
  post: (message: Claimed) => PostResult | null;
}

/** What a line of the day may have besides who, where and what. */
interface Line {
  id: string;
  sent: string;
  addressed: boolean;
  repliesTo: string | null;
  userName: string | null;
}

export const crewOn = async (database: Database, given: Partial<Given> = {}) => {
  const logged: { what: object; message: string }[] = [];
  const note = (what: object, message: string) => logged.push({ what, message });
  const log = { info: () => undefined, warn: note, error: note };
  const roster = given.roster ?? { ...sampleRoster, operation: `day-${crypto.randomUUID()}` };
  const store = await storeOver(database, [roster.operation]);
  const means = { platforms: ['local'], log, wakeDeliverer: () => undefined };
  const operation = await operateOn(store, roster, means);
  const bot: Bot = { ...operation.bot, ...given.bot };
  const delivered: Claimed[] = [];
  let said = 0;

  /** Delivers all that may go out by then. */
  const deliverBy = async (nowMs: number): Promise<void> => {
    const send = async (message: Claimed): Promise<PostResult> => {
      const refused = given.post?.(message) ?? null;
      if (refused !== null) return refused;
      delivered.push(message);
      return { result: 'sent', messageId: `bot-${message.id}` };
    };
    const clock = () => nowMs;
    await deliver(store.outbox, bot.platforms, reporting(send, bot, clock), clock, log);
  };
  const textsAfter = async (before: number, clock: string): Promise<string[]> => {
    await deliverBy(at(clock));
    return delivered.slice(before).map((message) => message.said.text);
  };
  const deliverAll = (clock: string): Promise<string[]> => textsAfter(delivered.length, clock);
  const hearEvent = async (
    who: string,
    room: string | null,
    event: Heard['event'],
    clock: string,
    line: Partial<Line>,
  ): Promise<string[]> => {
    const heardMs = at(clock);
    const sentMs = line.sent === undefined ? heardMs : at(line.sent);
    said += 1;
    const id = line.id ?? `m${said}`;
    const userName = line.userName ?? null;
    const { answered } = await hear(bot, {
      platform: given.platform ?? 'local',
      id,
      user: who,
      userName,
      room,
      sentMs,
      heardMs,
      event,
    });
    await answered;
    return deliverAll(clock);
  };

  return {
    operation,
    bot,
    logged,
    delivered,
    /** Delivers all that may go out, and gives the texts. */
    deliverAll,
    /** Who says what in the room (null = to the bot alone). Gives what the bot then says. */
    say: (who: string, room: string | null, text: string, clock: string, line: Partial<Line> = {}) => {
      const { addressed = false, repliesTo = null } = line;
      return hearEvent(who, room, { is: 'message', text, addressed, repliesTo }, clock, line);
    },
    edit: (who: string, room: string | null, of: string, text: string, clock: string) =>
      hearEvent(who, room, { is: 'edit', of, text }, clock, {}),
    takeBack: (who: string, room: string | null, of: string, clock: string) =>
      hearEvent(who, room, { is: 'deletion', of }, clock, {}),
    /** Hourly temperatures from the full hour on. Gives what the bot then says. */
    forecast: async (
      place: string,
      issued: string,
      fromHour: string,
      temperatures: readonly Fahrenheit[],
      clock = issued,
      more: Partial<Pick<ForecastHeard, 'freezeAlerts' | 'rain'>> = {},
    ): Promise<string[]> => {
      const hours = temperatures.map((temperatureF, hour) => ({
        startMs: at(fromHour) + hour * 3_600_000,
        temperatureF,
      }));
      const refused = await hearForecast(bot, {
        place,
        issuedMs: at(issued),
        hours,
        freezeAlerts: null,
        rain: [],
        ...more,
        heardMs: at(clock),
      });
      if (refused) return [refused.refused];
      return deliverAll(clock);
    },
    /** Time passes until then. Gives what the bot says meanwhile. */
    passTo: async (clock: string): Promise<string[]> => {
      const before = delivered.length;
      await (
        await tick(bot, at(clock), deliverBy)
      ).answered;
      return textsAfter(before, clock);
    },
    heardBy: (person: string) =>
      delivered
        .filter(({ recipient }) => 'person' in recipient && recipient.person === person)
        .map((message) => message.said.text),
    heardIn: (room: string) =>
      delivered
        .filter(({ recipient }) => 'room' in recipient && recipient.room === room)
        .map((message) => message.said.text),
    factsSoFar: () => store.book.inOneGo(roster.operation, (page) => page.factsAfter(0)),
  };
};

export type Crew = Awaited<ReturnType<typeof crewOn>>;

/** Gives each test of the file a day of its own, on one database in memory. */
export const crewForEachTest = (take: (crew: Crew, database: Database) => void | Promise<void>): void => {
  let database: Database;
  beforeAll(async () => {
    database = await freshDatabase();
  });
  afterAll(() => database.close());
  beforeEach(async () => {
    await take(await crewOn(database), database);
  });
};
