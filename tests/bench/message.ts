/**
 * What a message costs from "heard" to "safe with its answer", against the floor: one transaction of the same database
 * that inserts one inbox, one fact and one outbox row. Both alternate, because other work on the machine slows both.
 *
 * `node tests/bench/message.ts [days]`: with a full day of five trucks and 60 loads behind it, or with so many days.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { operateOn } from '../../src/command/operate.ts';
import type { Fact } from '../../src/core/book/facts.ts';
import type { Heard } from '../../src/ports/chat.ts';
import type { Outgoing } from '../../src/ports/outbox.ts';
import { hear } from '../../src/run/in/hear.ts';
import { openDatabase } from '../../src/store/database.ts';
import { storeOver } from '../../src/store/open.ts';
import { rowFrom } from '../../src/store/outbox-row.ts';
import { facts, inbox, outbox } from '../../src/store/schema.ts';
import { sampleRoster } from '../support/roster.ts';

const MESSAGES = 300;
const AIM = 3;
const MINUTE_MS = 60_000;
const DAY_MS = 1_440 * MINUTE_MS;
const days = Number(process.argv[2] ?? 1);

const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };
const directory = mkdtempSync(join(tmpdir(), 'fieldbell-bench-'));
const database = await openDatabase({ embedded: directory });
const store = await storeOver(database, ['sample']);
const { bot } = await operateOn(store, sampleRoster, {
  platforms: ['local'],
  log: quiet,
  wakeDeliverer: () => undefined,
});

/** The drivers' round trips in turn: field, loaded, line, dumped, ticket. `step` counts the messages of the day. */
const TRUCKS = [
  ['ana', '1'],
  ['ben', '2'],
  ['carla', '3'],
  ['dale', '4'],
  ['eli', '5'],
] as const;
const wordsOf = (stage: number, load: number): string =>
  [
    'at the field',
    'loaded',
    'in line, 9 ahead',
    'dumped',
    `ticket ${50_000 + load} gross ${79_000 + (load % 50) * 20} tare 29320`,
  ][stage] ?? '';
const messageOf = (step: number, dayStartMs: number): Heard => {
  const [user] = TRUCKS[step % TRUCKS.length] ?? TRUCKS[0];
  const round = Math.floor(step / TRUCKS.length);
  const load = Math.floor(round / 5) * TRUCKS.length + (step % TRUCKS.length);
  const atMs = dayStartMs + step * 3 * MINUTE_MS;
  const text = wordsOf(round % 5, load + Math.floor(dayStartMs / DAY_MS) * 1_000);
  return {
    platform: 'local',
    id: `m${dayStartMs}-${step}`,
    user,
    userName: null,
    room: 'crew',
    sentMs: atMs,
    heardMs: atMs,
    event: { is: 'message', text, addressed: false, repliesTo: null },
  };
};

/** The same day again, so many days earlier. */
const earlier = (fact: Fact, daysBefore: number): Fact => {
  const shiftMs = daysBefore * DAY_MS;
  const cause = `${fact.cause}-${daysBefore}`;
  const times = {
    atMs: fact.atMs - shiftMs,
    sentMs: fact.sentMs - shiftMs,
    heardMs: fact.heardMs - shiftMs,
  };
  const moved = { ...fact, ...times, cause, id: `${fact.id}-${daysBefore}` };
  if (moved.kind !== 'ticket-booked') return moved;
  const serial = `${moved.ticket.serial ?? ''}${daysBefore}`;
  return { ...moved, ticket: { ...moved.ticket, serial } };
};

const startMs = Date.parse('2026-10-20T05:00:00-06:00');
for (let step = 0; step < MESSAGES; step += 1) await hear(bot, messageOf(step, startMs));
const today = (await store.book.inOneGo('sample', (page) => page.factsAfter(0))).map((row) => row.fact);
for (let before = 1; before < days; before += 1)
  await store.book.inOneGo('sample', (page) => page.write(today.map((fact) => earlier(fact, before))));

const bareMessage = (step: number): Outgoing => ({
  key: `floor-${step}`,
  recipient: { room: 'crew' },
  platform: 'local',
  to: { room: 'crew' },
  kind: 'receipt',
  cause: `local:floor-${step}`,
  data: { facts: today.slice(0, 1) },
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
  notBeforeMs: startMs,
  expiresMs: null,
});

/** Nothing but the three rows. */
const floor = (step: number): Promise<void> => {
  const heard = { ...messageOf(step, startMs), id: `floor-${step}` };
  const [sample] = today;
  if (!sample) throw new Error('The day has no facts.');
  const { kind, atMs, heardMs } = sample;
  const cause = `local:${heard.id}`;
  const message = { operation: 'floor', platform: 'local', messageId: heard.id, heardMs, body: heard };
  const fact = { operation: 'floor', id: `${cause}#0`, kind, atMs, heardMs, cause, body: sample };
  return database.db.transaction(async (tx) => {
    await tx.insert(inbox).values(message);
    await tx.insert(facts).values(fact);
    await tx.insert(outbox).values(rowFrom('floor', bareMessage(step)));
  });
};

interface Cost {
  wallMs: number;
  cpuMs: number;
}

const cost = async (work: () => Promise<void>): Promise<Cost> => {
  const [begunMs, begun] = [performance.now(), process.cpuUsage()];
  await work();
  const { user, system } = process.cpuUsage(begun);
  return { wallMs: performance.now() - begunMs, cpuMs: (user + system) / 1000 };
};

const median = (numbers: readonly number[]): number =>
  [...numbers].sort((a, b) => a - b)[numbers.length >> 1] ?? 0;

const nextDayMs = startMs + DAY_MS;
const [handled, bare]: [Cost[], Cost[]] = [[], []];
for (let step = 0; step < MESSAGES; step += 1) {
  handled.push(
    await cost(async () => {
      await hear(bot, messageOf(step, nextDayMs));
    }),
  );
  bare.push(await cost(() => floor(step)));
}

const told = (name: string, of: (one: Cost) => number): void => {
  const [a, b] = [median(handled.map(of)), median(bare.map(of))];
  console.log(
    `${name}: ${a.toFixed(1)} ms a message, floor ${b.toFixed(1)} ms: ${(a / b).toFixed(2)} times (aim: at most ${AIM})`,
  );
};
const written = bot.known.seq;
console.log(
  `${MESSAGES} messages, ${days} day(s) and ${written} facts behind them, load average ${loadavg()[0]?.toFixed(1) ?? '?'}`,
);
told('Median time', ({ wallMs }) => wallMs);
told('Median processor time', ({ cpuMs }) => cpuMs);
await database.close();
rmSync(directory, { recursive: true });
