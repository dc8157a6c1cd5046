/** The line's forecasts in the shell: in threads of their own, without them, and the same from the same messages. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, onTestFinished, test } from 'vitest';
import { replay } from '../../../src/command/replay.ts';
import { foldHarvest } from '../../../src/core/harvest/fold.ts';
import { lineHistory } from '../../../src/core/line/history.ts';
import { lineHere } from '../../../src/run/line/service.ts';
import { lineThreads } from '../../../src/run/line/thread.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import type { Database } from '../../../src/store/database.ts';
import { crewForEachTest, crewOn } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';
import { at } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';
import { seasonFacts } from '../../support/season.ts';
import type { LineAsk } from '../../../src/run/line/forecaster.ts';

const NORTH = 'north-station';
const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };

/** Threads may start slowly on a busy machine. */
const PATIENT = { forecastMs: 60_000, learnMs: 200_000 };

const threads = (script?: URL, patience = PATIENT) => {
  const warned: string[] = [];
  const warn = (_: object, message: string) => warned.push(message);
  const line = lineThreads({ ...quiet, warn }, patience, script);
  onTestFinished(line.close);
  return { line, warned };
};

/** A thread whose code is this. */
const scriptOf = (code: string): URL => {
  const file = join(mkdtempSync(join(tmpdir(), 'fieldbell-thread-')), 'thread.mjs');
  writeFileSync(file, code);
  return pathToFileURL(file);
};

const askAt = (fromDate: number, clock: string, arriveInMin = 0): LineAsk => {
  const facts = seasonFacts(fromDate, 20, 12).filter((fact) => fact.heardMs <= at(clock));
  const history = lineHistory(foldHarvest(sampleRoster, facts), NORTH, zoneClock, at(clock));
  return { observations: history.today, ask: { nowMs: at(clock), arriveInMin }, history };
};

describe('in threads of their own', { timeout: 300_000 }, () => {
  test('the forecasts are those of this thread, once the past is learned', async () => {
    const { line, warned } = threads();
    const asks = [askAt(17, '11:00'), askAt(17, '11:00', 30)];
    const early = await line.forecast(asks);
    expect(early.map(({ known }) => known)).toEqual([true, true]);
    await line.settled();
    const here = await lineHere().forecast(asks);
    expect(await line.forecast(asks)).toEqual(here);
    expect(early).not.toEqual(here);
    expect(warned).toEqual([]);
  });

  test('a thread that breaks is told in the log, and started anew for the next order', async () => {
    const broken = scriptOf(
      `import { parentPort } from 'node:worker_threads'; parentPort.on('message', () => { throw new Error('broke'); });`,
    );
    const { line, warned } = threads(broken);
    const ask = askAt(20, '11:00');
    await expect(line.forecast([ask])).rejects.toThrow('broke');
    await expect(line.forecast([ask])).rejects.toThrow('broke');
    await line.settled();
    expect(warned).toEqual(['The line was not learned; what was known before still holds']);
  });

  test('a thread that hangs is given up', async () => {
    const hanging = scriptOf(
      `import { parentPort } from 'node:worker_threads'; parentPort.on('message', () => {});`,
    );
    const { line } = threads(hanging, { forecastMs: 20, learnMs: 20 });
    await expect(line.forecast([askAt(20, '11:00')])).rejects.toThrow('not answered within 20 ms');
    await line.settled();
  });
});

let crew: Crew;
let database: Database;
crewForEachTest((fresh, open) => {
  crew = fresh;
  database = open;
});

const withPast = async (fromDate: number, toDate: number, line: Crew['bot']['line']): Promise<Crew> => {
  const told = await crewOn(database, { bot: { line } });
  const facts = seasonFacts(fromDate, toDate, 14);
  await told.bot.book.inOneGo(told.bot.roster.operation, (page) => page.write(facts));
  return told;
};

describe('asked in the chat', { timeout: 300_000 }, () => {
  test('while a season is being learned, questions are answered, one after another', async () => {
    const { line } = threads();
    crew = await withPast(1, 19, line);
    const learned = { yet: false };
    await crew.say('ben', 'crew', 'in line, 14 ahead', '09:00');
    const [first] = await crew.say('ruth', 'crew', 'how long is the line', '09:02');
    void line.settled().then(() => (learned.yet = true));
    const [second] = await crew.say('ana', 'crew', '¿cómo está la fila?', '09:02');
    const [third] = await crew.say('ruth', 'crew', 'tons today?', '09:03');
    expect(learned.yet).toBe(false);
    expect(first).toMatch(/^Line at North station: about \d+ min .* trucks ahead/);
    expect(second).toMatch(/^Fila en North station: unos \d+ min/);
    expect(third).toContain('0.00 tons');
    await line.settled();
    const [after] = await crew.say('ruth', 'crew', 'how long is the line', '09:04');
    expect(after).toMatch(/^Line at North station: about \d+ min/);
  });

  test('with no thread to be had, the answer rests on the last waits, and the log says so', async () => {
    const { line } = threads(scriptOf('process.exit(3);'));
    crew = await withPast(20, 20, line);
    const [answer] = await crew.say('ruth', 'crew', 'how long is the line', '11:00');
    expect(answer).toMatch(/^Line at North station: about \d+ min/);
    expect(crew.logged.map(({ message }) => message)).toContain(
      'The line cannot be forecast; the answer rests on the last waits alone',
    );
    expect(crew.delivered.at(-1)?.data).toMatchObject({ known: true });
  });

  test('the look at the line outlives a restart: a full line is told once', async () => {
    await crew.say('ruth', null, 'line limit 30 min', '06:00');
    await crew.say('ben', 'crew', 'in line, 25 ahead', '09:01');
    const again = async (clock: string): Promise<string[]> => {
      const anew = await crewOn(database, { roster: crew.bot.roster });
      return anew.passTo(clock);
    };
    expect(await again('09:06')).toEqual([
      expect.stringContaining('over your limit of 30 min'),
      expect.stringContaining('su límite de 30 min'),
    ]);
    expect(await again('09:11')).toEqual([]);
  });
});

describe('the look at the line', { timeout: 300_000 }, () => {
  test('that fails is logged, and the stop of the dig goes out all the same', async () => {
    const clock = {
      ...zoneClock,
      wall: (zone: string, atMs: number) => {
        if (atMs === at('09:05')) throw new Error('no calendar');
        return zoneClock.wall(zone, atMs);
      },
    };
    crew = await crewOn(database, { bot: { clock } });
    await crew.say('ben', 'crew', 'in line, 14 ahead', '09:01');
    await crew.passTo('09:06');
    await crew.say('mateo', null, 'stop digging now, mud', '09:07');
    expect(crew.heardIn('crew').at(-1)).toContain('MUD HOLD');
    await crew.passTo('09:31');
    expect(crew.logged).toMatchObject([{ what: { why: 'no calendar' } }]);
  });

  test('leaves out the hours in which the bot was stopped', async () => {
    await crew.say('ruth', null, 'line limit 30 min', '06:00');
    await crew.say('ben', 'crew', 'in line, 30 ahead', '09:01');
    const told = await crew.passTo('11:00');
    const [first] = (await crew.factsSoFar()).filter(({ fact }) => fact.kind === 'line-warned');
    expect(first?.fact.atMs).toBeGreaterThanOrEqual(at('10:00'));
    expect(told.length).toBeGreaterThan(0);
  });
});

const lines = (): string[] =>
  [
    '08:00 loaded',
    '08:25 in line, 9 ahead',
    '08:30 how long is the line',
    '08:50 if I leave at 10',
    '09:00 how many trucks',
  ].map((said, number) => {
    const [clock = '', ...words] = said.split(' ');
    return JSON.stringify({
      at: `2026-10-20T${clock}:00-06:00`,
      id: `m${number}`,
      from: 'ben',
      text: words.join(' '),
    });
  });

async function* each(texts: readonly string[]): AsyncIterable<string> {
  yield* texts;
}

test('a recorded day gives the same answers each time', { timeout: 300_000 }, async () => {
  const played = async (): Promise<string[]> => {
    const printed: string[] = [];
    const complain = (fault: string) => printed.push(fault);
    const print = (json: string) => printed.push(json);
    await replay({
      lines: each(lines()),
      roster: sampleRoster,
      place: { memory: true },
      print,
      complain,
      log: quiet,
    });
    return printed;
  };
  const first = await played();
  expect(first.map((json) => (JSON.parse(json) as { kind: string }).kind)).toEqual([
    'receipt',
    'receipt',
    'wait',
    'wait',
    'fleet',
  ]);
  expect(await played()).toEqual(first);
});
