/**
 * An invented operation on a real homeserver, the bot as a process of its own, and people whose apps know nothing of the
 * bot's SDK. A day is a run of rounds: in each, every driver takes one load to the station.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { asc } from 'drizzle-orm';
import { openDatabase } from '../../../src/store/database.ts';
import { facts, inbox, outbox } from '../../../src/store/schema.ts';
import { startFieldbell } from '../fieldbell.ts';
import type { Fieldbell } from '../fieldbell.ts';
import { temporaryDirectory } from '../temporary.ts';
import { waitFor } from '../wait-for.ts';
import { ENCRYPTED } from './crew.ts';
import type { NioUser } from './nio-user.ts';
import { nioUser } from './nio-user.ts';
import { rawUser } from './raw-user.ts';
import type { Account, Synapse } from './synapse.ts';

export const DRIVERS = ['ana', 'ben', 'carla', 'dale', 'eli'] as const;
const FOREMAN = 'mateo';
const SHOWN_WITHIN_MS = 180_000;

export const GROSS_LB = 79_840;
export const TARE_LB = 29_320;

/** A zone where it is about noon, so that the day does not end while the test runs. */
const noonZone = (): string => {
  const hours = 12 - new Date().getUTCHours();
  // Those names count west of Greenwich as plus: https://data.iana.org/time-zones/tzdb/etcetera
  return hours === 0 ? 'Etc/GMT' : `Etc/GMT${hours > 0 ? '-' : '+'}${Math.abs(hours)}`;
};

const person = (name: string, role: string, more: string, user: string): string =>
  `  - {name: ${name}, role: ${role}${more}, addresses: {matrix: "${user}"}}`;

/** The room is not in it: the foreman names it in chat. */
const operationFile = (foreman: Account, drivers: readonly Account[]): string =>
  [
    'name: Loopback farm',
    'id: loopback',
    `zone: ${noonZone()}`,
    'people:',
    person(FOREMAN, 'foreman', '', foreman.user),
    ...drivers.map(({ user }, at) => person(DRIVERS[at] ?? '', 'driver', `, truck: ${at + 1}`, user)),
    'trucks:',
    ...drivers.map((_, at) => `  - {id: ${at + 1}}`),
    'fields:',
    '  - {name: North 40}',
    'stations:',
    '  - {name: North station, air-limit: 60 F, root-limit: 55 F, pilers: 2}',
    '',
  ].join('\n');

/** What somebody said, and what it must have become. */
interface Said {
  id: string;
  became: 'left-field' | 'joined-line' | 'at-field' | 'ticket' | 'order' | 'question' | 'list-changed';
  /** Its answer may have been shown when the bot was killed, but not noted as shown. */
  last: boolean;
}

export interface Day {
  foreman: NioUser;
  drivers: readonly NioUser[];
  room: string;
  said: Said[];
  /** Starts the bot; a second one only after the first has ended. */
  start: () => Fieldbell;
  order: (words: string) => Promise<void>;
  /** Each driver loads, waits in line and weighs, side by side; `onSaid` hears how many of it have been said. */
  round: (number: number, onSaid?: (count: number) => void) => Promise<void>;
  /** Resolves when the tickets of that round have been answered. */
  answered: (number: number) => Promise<void>;
  /** Resolves when all know the bot's device, and it reads their room by the foreman's word. */
  met: () => Promise<unknown>;
  /**
   * Says one more thing in each place, and resolves when it is answered: each place is served in order, so all before it
   * is done.
   */
  settled: () => Promise<unknown>;
  /** The book and the outbox of a bot that no longer runs. */
  book: () => Promise<Book>;
}

const serial = (round: number, driver: number): string => `${48_000 + round * 10 + driver}`;

export const gatherDay = async (
  synapse: Synapse,
  { encrypted, botUrl = synapse.url }: { encrypted: boolean; botUrl?: string },
): Promise<Day> => {
  const names = ['bell', FOREMAN, ...DRIVERS];
  const suffix = encrypted ? 'e' : 'p';
  const accounts = await Promise.all(names.map((name) => synapse.register(`${name}${suffix}${Date.now()}`)));
  const [bot, boss, ...crew] = accounts;
  if (bot === undefined || boss === undefined) throw new Error('two accounts');
  const owner = await rawUser(synapse.url, boss);
  const room = await owner.createRoom(
    [bot, ...crew].map(({ user }) => user),
    encrypted ? ENCRYPTED : {},
  );
  const [foreman, ...drivers] = await Promise.all([boss, ...crew].map((each) => nioUser(synapse.url, each)));
  if (foreman === undefined) throw new Error('a foreman');
  const home = temporaryDirectory();
  writeFileSync(join(home, 'operation.yaml'), operationFile(boss, crew));
  const said: Said[] = [];
  const say = async (user: NioUser, words: string, became: Said['became']): Promise<void> => {
    const id = await user.say(room, words);
    said.push({ id, became, last: false });
  };
  const aloneWith = (user: NioUser): string =>
    user.messages().find((each) => each.sender === bot.user && each.room !== room)?.room ?? '';
  const shown = (user: NioUser, where: string, answer: string): Promise<unknown> =>
    waitFor(
      `"${answer}" for ${user.user}`,
      () => user.messages().some((each) => each.room === where && each.text.includes(answer)),
      SHOWN_WITHIN_MS,
    );
  const close = async (
    user: NioUser,
    where: string,
    words: string,
    became: Said['became'],
    answer: string,
  ) => {
    said.push({ id: await user.say(where, words), became, last: true });
    await shown(user, where, answer);
  };
  const start = () =>
    startFieldbell([], {
      FIELDBELL_OPERATION: join(home, 'operation.yaml'),
      FIELDBELL_DATABASE: join(home, 'database'),
      FIELDBELL_LOG: 'warn',
      FIELDBELL_HEALTH_PORT: '0',
      FIELDBELL_MATRIX_HOMESERVER: botUrl,
      FIELDBELL_MATRIX_USER: bot.user,
      FIELDBELL_MATRIX_PASSWORD: bot.password,
      FIELDBELL_MATRIX_DIRECTORY: join(home, 'matrix'),
      FIELDBELL_MATRIX_ENCRYPTION: encrypted ? 'on' : 'off',
    });
  return {
    foreman,
    drivers,
    room,
    said,
    start,
    order: (words) => say(foreman, words, 'order'),
    round: async (number, onSaid = () => undefined) => {
      let count = 0;
      const told = () => {
        count += 1;
        onSaid(count);
      };
      const load = async (driver: NioUser, at: number): Promise<void> => {
        await say(driver, 'loaded', 'left-field').then(told);
        await say(driver, 'in line', 'joined-line').then(told);
        await say(driver, `${serial(number, at)} ${GROSS_LB} ${TARE_LB}`, 'ticket').then(told);
      };
      await Promise.all(drivers.map(load));
    },
    answered: async (number) => {
      const receipts = drivers.map((_, at) => `Ticket ${serial(number, at)}:`);
      const isShown = (receipt: string) => foreman.messages().some(({ text }) => text.includes(receipt));
      await waitFor(`receipts of round ${number}`, () => receipts.every(isShown), SHOWN_WITHIN_MS);
    },
    met: async () => {
      await Promise.all([foreman, ...drivers].map((each) => each.meets(room, bot.user)));
      await say(foreman, 'use this room', 'list-changed');
      await shown(foreman, room, 'This is a room of the crew now');
    },
    settled: () =>
      Promise.all([
        close(drivers[0] ?? foreman, room, 'at the field', 'at-field', 'Truck 1: at the field'),
        ...[foreman, ...drivers].map((each) =>
          close(each, aloneWith(each), 'tons today?', 'question', 'Today so far'),
        ),
      ]),
    book: () => bookIn(join(home, 'database'), join(home, 'matrix')),
  };
};

export type Book = Awaited<ReturnType<typeof bookIn>>;

const bookIn = async (database: string, directory: string) => {
  const opened = await openDatabase({ embedded: database });
  const { db } = opened;
  const book = {
    heard: await db.select().from(inbox),
    facts: (await db.select({ body: facts.body }).from(facts).orderBy(asc(facts.seq))).map(
      ({ body }) => body,
    ),
    outbox: await db.select().from(outbox).orderBy(asc(outbox.id)),
    /** Messages whose key has not come. */
    unread: unreadIn(directory),
  };
  await opened.close();
  return book;
};

const unreadIn = (directory: string): unknown[] => {
  try {
    return JSON.parse(readFileSync(join(directory, 'unread.json'), 'utf8')) as unknown[];
  } catch {
    return [];
  }
};
