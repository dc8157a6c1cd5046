/** An invented harvest day for newcomers, played through the same hear, tick and deliver as the live bot. */
import { readFileSync } from 'node:fs';
import { setTimeout as sleep } from 'node:timers/promises';
import { LOCAL, personById } from '../core/roster.ts';
import type { Roster } from '../core/roster.ts';
import type { Claimed } from '../ports/outbox.ts';
import { deliver } from '../run/out/deliver.ts';
import type { Send } from '../run/out/deliver.ts';
import { zoneClock } from '../run/host/zone-clock.ts';
import { logTo } from './log.ts';
import { operate } from './operate.ts';
import { parseReplayLine } from './replay-line.ts';
import type { ReplayLine } from './replay-line.ts';
import { playLine } from './replay.ts';

const DAY = new URL('./demo-day.ndjson', import.meta.url);
/** Plays the whole day in about 45 s. */
const USUAL_SPEED = 1_200;
/** Quiet hours are cut to this. */
const LONGEST_PAUSE_MS = 2_000;

type Out = Pick<NodeJS.WriteStream, 'write'>;

const clockOf = (zone: string, atMs: number): string => {
  const { hour, minute } = zoneClock.wall(zone, atMs);
  return `${String(hour).padStart(2, ' ')}:${String(minute).padStart(2, '0')}`;
};

const nameOf = (roster: Roster, id: string): string => personById(roster, id)?.name ?? id;

const indented = (text: string): string => text.replaceAll('\n', '\n              ');

const heardText = (line: ReplayLine, roster: Roster): string | null => {
  if (line.is === 'forecast') return '(a new hourly forecast comes in)';
  if (line.is !== 'heard' || line.heard.event.is !== 'message') return null;
  const to = line.heard.room === null ? 'to the bot alone' : `in ${line.heard.room}`;
  return `${nameOf(roster, line.heard.user)}, ${to}: ${line.heard.event.text}`;
};

const answerText = (message: Claimed, roster: Roster): string => {
  const { recipient, said } = message;
  const to = 'room' in recipient ? `in ${recipient.room}` : `to ${nameOf(roster, recipient.person)} only`;
  return indented(`Fieldbell, ${to}: ${said.text}`);
};

/** A notice goes to everybody separately; only the room's copy is shown, and the others are counted. */
const showAll = (
  messages: readonly Claimed[],
  show: (atMs: number, text: string) => void,
  roster: Roster,
): void => {
  const personal = messages.filter((message) => message.kind === 'notice' && 'person' in message.recipient);
  for (const message of messages)
    if (!personal.includes(message)) show(message.notBeforeMs, answerText(message, roster));
  const [first] = personal;
  if (first)
    show(
      first.notBeforeMs,
      `Fieldbell: the same to each of ${personal.length} people alone, in their own language.`,
    );
};

const demoLines = (): ReplayLine[] =>
  readFileSync(DAY, 'utf8')
    .split('\n')
    .filter((text) => text.trim() !== '')
    .map((text, at) => {
      const parsed = parseReplayLine(text);
      if ('fault' in parsed) throw new Error(`The demo day is damaged: line ${at + 1} ${parsed.fault}.`);
      return parsed.line;
    });

/** Plays the day on a database in memory. `speed`: times faster than life; null = about 45 s in all. */
export const playDemo = async (roster: Roster, speed: number | null, out: Out): Promise<void> => {
  const log = logTo('warn');
  const operation = await operate(
    roster,
    { memory: true },
    { platforms: [LOCAL], log, wakeDeliverer: () => undefined },
  );
  const pace = speed ?? USUAL_SPEED;
  out.write(
    `A harvest day at ${roster.name}, invented, ${pace} times faster than life. Ctrl-C stops it.\n\n`,
  );
  let lastMs: number | null = null;
  try {
    for (const line of demoLines()) {
      const { atMs } = line;
      if (lastMs !== null) await sleep(Math.min(LONGEST_PAUSE_MS, Math.max(0, atMs - lastMs) / pace));
      lastMs = atMs;
      const show = (shownMs: number, text: string): void => {
        out.write(`${clockOf(roster.zone, shownMs)}  ${text}\n`);
      };
      const heard = heardText(line, roster);
      const deliverAt = async (dueMs: number): Promise<void> => {
        const shown: Claimed[] = [];
        const send: Send = (message) => {
          shown.push(message);
          return Promise.resolve({ result: 'sent', messageId: `answer-${message.id}` });
        };
        await deliver(operation.store.outbox, [LOCAL], send, () => dueMs, log);
        showAll(shown, show, roster);
      };
      await playLine({ is: 'tick', atMs }, atMs, operation, deliverAt);
      if (heard !== null) show(atMs, heard);
      await playLine(line, atMs, operation, deliverAt);
      await deliverAt(atMs);
    }
  } finally {
    await operation.close();
  }
  out.write('\nThat was the day. "npm start" opens a chat with the same crew: say "help" there.\n');
};
