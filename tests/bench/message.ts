/**
 * What a message costs from "heard" to "safe with its answer", against the floor: one transaction of the same database
 * that inserts one inbox, one fact and one outbox row. Both alternate, because other work on the machine slows both.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { operateOn } from '../../src/command/operate.ts';
import type { Fact } from '../../src/core/book/facts.ts';
import type { Outgoing } from '../../src/ports/outbox.ts';
import type { Bot } from '../../src/run/host/bot.ts';
import { hear } from '../../src/run/in/hear.ts';
import { openDatabase } from '../../src/store/database.ts';
import type { Database } from '../../src/store/database.ts';
import { storeOver } from '../../src/store/open.ts';
import { rowFrom } from '../../src/store/outbox-row.ts';
import { facts, inbox, outbox } from '../../src/store/schema.ts';
import { sampleRoster } from '../support/roster.ts';
import { cost, median } from './cost.ts';
import type { Cost } from './cost.ts';
import { DAY_MS, MESSAGES_A_DAY, MINUTE_MS, heardFrom, messageOf, writeSeason } from './season.ts';

const START_MS = Date.parse('2026-10-20T05:00:00-06:00');
export const NEXT_DAY_MS = START_MS + DAY_MS;
const UNDOS = 390;

const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };

const bareMessage = (step: number, sample: Fact): Outgoing => ({
  key: `floor-${step}`,
  recipient: { room: 'crew' },
  platform: 'local',
  to: { room: 'crew' },
  kind: 'receipt',
  cause: `local:floor-${step}`,
  data: { facts: [sample] },
  said: {
    text: 'Troca 1: cargada, sale de North 40, 7:05 a.m.',
    table: null,
    buttons: ['Loaded', 'In line', 'Dumped'].map((label) => ({ label, words: `truck 1 ${label}` })),
    picture: null,
    ring: false,
    mentions: [],
  },
  repliesTo: `floor-${step}`,
  slot: null,
  urgent: false,
  notBeforeMs: START_MS,
  expiresMs: null,
});

/** Nothing but the three rows. */
const floor = (database: Database, step: number, sample: Fact): Promise<void> => {
  const heard = { ...messageOf(step, START_MS), id: `floor-${step}` };
  const { kind, atMs, heardMs } = sample;
  const cause = `local:${heard.id}`;
  const message = { operation: 'floor', platform: 'local', messageId: heard.id, heardMs, body: heard };
  const fact = { operation: 'floor', id: `${cause}#0`, kind, atMs, heardMs, cause, body: sample };
  return database.db.transaction(async (tx) => {
    await tx.insert(inbox).values(message);
    await tx.insert(facts).values(fact);
    await tx.insert(outbox).values(rowFrom('floor', bareMessage(step, sample)));
  });
};

/** Runs `work` on a season of its own in an embedded database. */
export const onSeason = async <T>(
  days: number,
  undoes: boolean,
  work: (bot: Bot, database: Database, sample: Fact) => Promise<T>,
): Promise<T> => {
  const directory = mkdtempSync(join(tmpdir(), 'fieldbell-bench-'));
  const database = await openDatabase({ embedded: directory });
  try {
    const store = await storeOver(database, ['sample']);
    const means = { platforms: ['local'], log: quiet, wakeDeliverer: () => undefined };
    const { bot } = await operateOn(store, sampleRoster, means);
    const [sample] = await writeSeason(bot, START_MS, days, undoes);
    if (!sample) throw new Error('The day has no facts.');
    return await work(bot, database, sample);
  } finally {
    await database.close();
    rmSync(directory, { recursive: true });
  }
};

export interface MessageCost {
  days: number;
  /** Medians of a message and of the floor, and how many times as much the one is. */
  message: Cost;
  floor: Cost;
  ratio: { wall: number; cpu: number };
}

/** A day's messages with so many days behind them, an undo in each where wanted. */
export const messageCost = (days: number, undoes: boolean): Promise<MessageCost> =>
  onSeason(days, undoes, async (bot, database, sample) => {
    // The season that was written for it is read and folded here, and counted by nobody.
    await hear(bot, heardFrom('ruth', null, 'first', 'thanks', NEXT_DAY_MS - MINUTE_MS));
    const [handled, bare]: [Cost[], Cost[]] = [[], []];
    for (let step = 0; step < MESSAGES_A_DAY; step += 1) {
      handled.push(await cost(() => hear(bot, messageOf(step, NEXT_DAY_MS))));
      bare.push(await cost(() => floor(database, step, sample)));
    }
    const typical = (costs: readonly Cost[]): Cost => ({
      wallMs: median(costs.map(({ wallMs }) => wallMs)),
      cpuMs: median(costs.map(({ cpuMs }) => cpuMs)),
    });
    const [message, least] = [typical(handled), typical(bare)];
    const ratio = { wall: message.wallMs / least.wallMs, cpu: message.cpuMs / least.cpuMs };
    return { days, message, floor: least, ratio };
  });

/** "Undo" so many times in one message, with so many days behind it. */
export const undosCost = (days: number): Promise<Cost> =>
  onSeason(days, false, async (bot) => {
    const text = 'undo '.repeat(UNDOS).trim();
    const costs: Cost[] = [];
    await hear(bot, heardFrom('ruth', null, 'first', 'thanks', NEXT_DAY_MS - MINUTE_MS));
    for (let nth = 0; nth < 5; nth += 1) {
      const atMs = NEXT_DAY_MS + nth * MINUTE_MS;
      costs.push(await cost(() => hear(bot, heardFrom('ana', null, `undos-${nth}`, text, atMs))));
    }
    return {
      wallMs: median(costs.map(({ wallMs }) => wallMs)),
      cpuMs: median(costs.map(({ cpuMs }) => cpuMs)),
    };
  });

/** A stop order that comes while the forecast for a question hangs: until it is safe, milliseconds. */
export const stopBesideForecast = (days: number): Promise<Cost> =>
  onSeason(days, false, async (bot) => {
    await hear(bot, heardFrom('ruth', null, 'first', 'thanks', NEXT_DAY_MS - MINUTE_MS));
    const hangs = Promise.withResolvers<never>();
    const line = { ...bot.line, forecast: () => hangs.promise };
    const { answered } = await hear(
      { ...bot, line },
      heardFrom('ruth', null, 'asked', 'how long is the line', NEXT_DAY_MS),
    );
    const order = heardFrom('mateo', null, 'order', 'stop digging, mud', NEXT_DAY_MS);
    const took = await cost(async () => {
      await hear(bot, order);
    });
    hangs.reject(new Error('given up'));
    await answered;
    return took;
  });
