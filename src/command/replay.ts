/** Plays a recorded day through the same hear, tick and deliver as the live bot, with the clock of its lines. */
import type { Roster } from '../core/roster.ts';
import { LOCAL } from '../core/roster.ts';
import type { Claimed } from '../ports/outbox.ts';
import { deliver } from '../run/out/deliver.ts';
import type { Send } from '../run/out/deliver.ts';
import { hear } from '../run/in/hear.ts';
import { tick } from '../run/time/tick.ts';
import { operate } from './operate.ts';
import type { DatabasePlace } from '../store/database.ts';
import type { Operation } from './operate.ts';
import { hearRecordedForecast } from './recorded-weather.ts';
import { parseReplayLine } from './replay-line.ts';
import type { ReplayLine } from './replay-line.ts';
import type { Log } from '../ports/log.ts';

export interface ReplayDeps {
  lines: AsyncIterable<string>;
  roster: Roster;
  place: DatabasePlace;
  /** Prints one answer, a line of JSON. */
  print: (json: string) => void;
  /** Prints one fault, with the number of its line. */
  complain: (fault: string) => void;
  log: Log;
}

/** The lines of a stream; rejects if the stream fails, where those of `node:readline` would just end. */
export async function* linesOf(input: NodeJS.ReadableStream): AsyncIterable<string> {
  input.setEncoding('utf8');
  let rest = '';
  for await (const piece of input) {
    const lines = (rest + String(piece)).split(/\r?\n/);
    rest = lines.pop() ?? '';
    yield* lines;
  }
  yield rest;
}

/** Without the platform: answers name the message's own id as their cause. */
const bareCause = (cause: string): string =>
  cause.startsWith(`${LOCAL}:`) ? cause.slice(LOCAL.length + 1) : cause;

const answerLine = (message: Claimed, iso: (atMs: number) => string): string => {
  const { notBeforeMs, recipient, said, kind, cause, data } = message;
  return JSON.stringify({
    at: iso(notBeforeMs),
    to: recipient,
    text: said.text,
    kind,
    cause: bareCause(cause),
    data,
  });
};

/** Everything up to the line, and the line itself. `deliverAt` sends what may go out by then. */
export const playLine = async (
  line: ReplayLine,
  nowMs: number,
  { bot }: Operation,
  deliverAt: (atMs: number) => Promise<unknown>,
): Promise<string | null> => {
  await (
    await tick(bot, nowMs, deliverAt)
  ).answered;
  switch (line.is) {
    case 'tick':
      return null;
    case 'heard':
      await (
        await hear(bot, { ...line.heard, heardMs: nowMs })
      ).answered;
      return null;
    case 'forecast': {
      const refused = await hearRecordedForecast(bot, line, nowMs);
      return refused && `forecast.place: "${line.place}" is not a station of this operation`;
    }
  }
};

/** Plays all lines and returns how many were faulty. Time never runs backwards: a line out of order is heard "now". */
export const replay = async (deps: ReplayDeps): Promise<number> => {
  const operation = await operate(deps.roster, deps.place, {
    platforms: [LOCAL],
    log: deps.log,
    wakeDeliverer: () => undefined,
  });
  const { iso } = operation.bot;
  const send: Send = async (message) => {
    deps.print(answerLine(message, iso));
    return { result: 'sent', messageId: `answer-${message.id}` };
  };
  const deliverAt = (atMs: number): Promise<number> =>
    deliver(operation.store.outbox, [LOCAL], send, () => atMs, deps.log);
  let [number, faults, nowMs] = [0, 0, -Infinity];
  const complain = (fault: string): void => {
    faults += 1;
    deps.complain(`line ${number}: ${fault}`);
  };
  try {
    for await (const text of deps.lines) {
      number += 1;
      if (text.trim() === '') continue;
      const parsed = parseReplayLine(text);
      if ('fault' in parsed) {
        complain(parsed.fault);
        continue;
      }
      nowMs = Math.max(nowMs, parsed.line.atMs);
      const fault = await playLine(parsed.line, nowMs, operation, deliverAt);
      if (fault !== null) complain(fault);
      await deliverAt(nowMs);
    }
  } finally {
    await operation.close();
  }
  return faults;
};
