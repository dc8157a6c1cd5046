/** The command line, and the only place where everything comes together. */
import { fstatSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { Command, InvalidArgumentError } from 'commander';
import { reasonOf } from './core/reason.ts';
import { localChat } from '../adapters/local/chat.ts';
import { linkChecks, linkedChats, platformsOf } from './command/chats.ts';
import { playDemo } from './command/demo.ts';
import { EXIT_SETTINGS } from './command/exit-codes.ts';
import { forecastFileTicker } from './command/weather-file.ts';
import { goLive } from './command/live.ts';
import { logTo } from './command/log.ts';
import { outliveLostConnections } from './command/lost-connection.ts';
import { exportedPhrases } from './command/export-phrases.ts';
import { noticeXml } from './command/notice-xml.ts';
import { operate } from './command/operate.ts';
import { linesOf, replay } from './command/replay.ts';
import { weatherService } from './command/weather-service.ts';
import { LOCAL } from './core/roster.ts';
import type { Chat } from './ports/chat.ts';
import { startHealth } from './run/host/health.ts';
import { isZone, zoneClock } from './run/host/zone-clock.ts';
import { loadSettings } from './settings/load.ts';
import type { Settings } from './settings/settings.ts';

const settingsOrExit = (env: Readonly<Record<string, string | undefined>>): Settings => {
  const loaded = loadSettings(env, isZone);
  if ('settings' in loaded) return loaded.settings;
  for (const fault of loaded.faults) console.error(fault);
  process.exit(EXIT_SETTINGS);
};

const clockTime = (zone: string, atMs: number): string => {
  const { hour, minute } = zoneClock.wall(zone, atMs);
  return `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
};

/** Under a service manager standard input is /dev/null: its end must not end the bot. */
const isNobodyThere = (): boolean => !process.stdin.isTTY && fstatSync(0).isCharacterDevice();

const onSignal = (end: () => void): void => {
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, end);
};

const runLive = async (options: { forecast: string | undefined }): Promise<void> => {
  const settings = settingsOrExit(process.env);
  const linked = platformsOf(settings);
  // If nobody can type, the terminal would only fill the log of a bot that has other chats.
  const isLocal = linked.length === 0 || !isNobodyThere();
  // In a terminal chat only problems are worth a log line between the messages.
  const isQuiet = linked.length === 0 && process.stdin.isTTY && process.env['FIELDBELL_LOG'] === undefined;
  const log = logTo(isQuiet ? 'warn' : settings.logLevel);
  for (const warning of settings.warnings) log.warn({}, warning);
  const { source, file, supply } = await weatherService(settings.weather, options.forecast, log);
  outliveLostConnections(log);
  const live: { wake: () => void } = { wake: () => undefined };
  const operation = await operate(settings.roster, settings.database, {
    platforms: [...(isLocal ? [LOCAL] : []), ...linked],
    log,
    wakeDeliverer: () => {
      live.wake();
    },
  });
  const ended = Promise.withResolvers<null>();
  const terminal = (): Chat =>
    localChat(
      {
        input: process.stdin,
        output: process.stdout,
        noColor: process.env['NO_COLOR'],
        onEnd: (why) => {
          if (why === 'quit' || !isNobodyThere()) ended.resolve(null);
        },
      },
      {
        people: () => operation.roster().people,
        rooms: () => operation.roster().rooms,
        nowMs: Date.now,
        wallTime: (atMs) => clockTime(settings.roster.zone, atMs),
      },
    );
  const chats = await linkedChats(settings, { operation, log });
  const health = await startHealth({
    ...settings.health,
    checks: {
      database: async () => (await operation.store.outbox.nextMs(), null),
      ...linkChecks(chats),
    },
    checkTimeoutMs: 2_000,
    registry: operation.metrics.registry,
  });
  const started = goLive(operation, [...(isLocal ? [terminal()] : []), ...chats], source, log, supply);
  live.wake = started.wake;
  const forecasts = forecastFileTicker(file, operation.bot, log);
  onSignal(() => {
    ended.resolve(null);
  });
  // A refused token ends the bot: otherwise it would hear nothing on that platform, and nobody would notice.
  started.listening.catch(ended.reject);
  try {
    await ended.promise;
  } finally {
    forecasts.stop();
    await health.close();
    await started.stop();
  }
};

const runReplay = async (file: string, options: { operation?: string; database?: string }): Promise<void> => {
  const named = options.operation === undefined ? {} : { FIELDBELL_OPERATION: options.operation };
  const settings = settingsOrExit({ ...process.env, ...named });
  // Opened first: otherwise the stream of a missing file would fail before anybody listens.
  const input = file === '-' ? process.stdin : (await open(file)).createReadStream();
  const faults = await replay({
    lines: linesOf(input),
    roster: settings.roster,
    place: options.database === undefined ? { memory: true } : { embedded: options.database },
    print: (json) => {
      process.stdout.write(`${json}\n`);
    },
    complain: (fault) => {
      console.error(fault);
    },
    log: logTo('warn'),
  });
  process.exitCode = faults > 0 ? 1 : 0;
};

const runNoticeXml = async (options: { event?: string }): Promise<void> => {
  const settings = settingsOrExit(process.env);
  const operation = await operate(settings.roster, settings.database, {
    platforms: [],
    log: logTo('warn'),
    wakeDeliverer: () => undefined,
  });
  const made = noticeXml(operation.harvest(), zoneClock, options.event ?? null);
  await operation.close();
  if ('xml' in made) process.stdout.write(made.xml);
  else {
    console.error(made.fault);
    process.exitCode = 1;
  }
};

const runExportPhrases = async (): Promise<void> => {
  const settings = settingsOrExit(process.env);
  const operation = await operate(settings.roster, settings.database, {
    platforms: [],
    log: logTo('warn'),
    wakeDeliverer: () => undefined,
  });
  const unread = await operation.store.phrases.unread(settings.roster.operation);
  const phrases = exportedPhrases(unread, operation.roster());
  await operation.close();
  for (const phrase of phrases) process.stdout.write(`${JSON.stringify(phrase)}\n`);
};

const speed = (text: string): number => {
  const times = Number(text);
  if (!(times > 0)) throw new InvalidArgumentError('Give a number above 0, such as 600.');
  return times;
};

const program = new Command('fieldbell').description(
  'Runs a sugar beet harvest day in the chat of the crew.',
);

program
  .command('run', { isDefault: true })
  .description('start the bot; without settings, a terminal chat with an invented sample operation')
  .option('--demo', 'play an invented harvest day and stop')
  .option('--speed <times>', 'with --demo: how many times faster than life', speed)
  .option(
    '--forecast <path>',
    'hourly forecasts as replay lines, or a folder of recorded replies of the weather service',
  )
  .action(async (options: { demo?: true; speed?: number; forecast?: string }) => {
    if (options.demo) await playDemo(settingsOrExit({}).roster, options.speed ?? null, process.stdout);
    else await runLive({ forecast: options.forecast });
  });

program
  .command('replay')
  .description('feed a recorded day through the bot; answers go to standard output, a line of JSON each')
  .argument('<file>', 'the day, one JSON object a line; - for standard input')
  .option('--operation <file>', 'operation file (otherwise FIELDBELL_OPERATION, otherwise the sample)')
  .option('--database <folder>', 'keep the book there (otherwise in memory)')
  .action(runReplay);

program
  .command('notice-xml')
  .description(
    'print a notice as XML of the Common Alerting Protocol 1.2; with a Postgres book beside the live bot',
  )
  .option('--event <id>', 'which one, by the event in its data (otherwise the newest)')
  .action(runNoticeXml);

program
  .command('export-phrases')
  .description(
    'print what the crew wrote and the bot could not read, without names and numbers, a line of JSON each; with a Postgres book beside the live bot',
  )
  .action(runExportPhrases);

try {
  await program.parseAsync();
} catch (error) {
  console.error(reasonOf(error));
  process.exitCode = 1;
}
