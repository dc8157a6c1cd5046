/** The real adapter, connected to the loopback Slack, with an inbox that remembers what it was given. */
import { createServer } from 'node:net';
import { once } from 'node:events';
import type { AddressInfo } from 'node:net';
import { slackChat } from '../../../adapters/slack/chat.ts';
import type { ChannelCursor } from '../../../adapters/slack/cursor.ts';
import type { SlackSettings } from '../../../adapters/slack/settings.ts';
import type { Heard, Said } from '../../../src/ports/chat.ts';
import { ticketForm } from '../../../src/saying/ticket-form.ts';
import type { Timing } from './delivery.ts';
import { waitFor } from '../wait-for.ts';
import { readManifest } from './manifest.ts';
import { SIGNING_SECRET } from './signing.ts';
import type { LoopbackSlack } from './slack.ts';
import { QUICK, startSlack } from './slack.ts';
import { TOKENS } from './web-api.ts';
import { plain } from '../said.ts';

const HOUR_MS = 3_600_000;

export const memoryCursor = (): ChannelCursor & { seen: Map<string, string> } => {
  const seen = new Map<string, string>();
  return {
    seen,
    lastSeen: async (channel) => seen.get(channel) ?? null,
    saw: async (channel, ts) => {
      const known = seen.get(channel);
      if (known === undefined || ts > known) seen.set(channel, ts);
    },
  };
};

const freePort = async (): Promise<number> => {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  // A listening TCP server's address is no string.
  const { port } = server.address() as AddressInfo;
  server.close();
  return port;
};

export interface BenchOptions {
  mode: 'socket' | 'http';
  timing: Timing;
  sweepEveryMs: number;
  scopes: readonly string[];
  /** How far Slack's clock is ahead of the machine's at the start; see `clock` of the bench. */
  aheadMs: number;
}

const settingsFor = async (
  mode: BenchOptions['mode'],
): Promise<{ intake: SlackSettings['intake']; eventsUrl: string | null }> => {
  if (mode === 'socket') return { intake: { mode, appToken: TOKENS.app }, eventsUrl: null };
  const [host, port, path] = ['127.0.0.1', await freePort(), '/slack/events'];
  return {
    intake: { mode, signingSecret: SIGNING_SECRET, host, port, path },
    eventsUrl: `http://${host}:${String(port)}${path}`,
  };
};

/** One running bot on `slack`; several may follow each other on the same cursor, as a restarted process would. */
export const startBot = (slack: LoopbackSlack, settings: SlackSettings, cursor: ChannelCursor) => {
  const heard: Heard[] = [];
  const logs: string[] = [];
  const state: { gate: Promise<void>; arrived: number; home: Said } = {
    gate: Promise.resolve(),
    arrived: 0,
    home: plain('Today'),
  };
  const chat = slackChat(settings, {
    cursor,
    form: ticketForm,
    homeFor: async () => state.home,
    draw: async (svg) => {
      if (svg === '') throw new Error('no SVG');
      return new TextEncoder().encode(svg);
    },
    nowMs: () => Date.now(),
    log: (level, message) => logs.push(`${level}: ${message}`),
  });
  const listen = (): Promise<void> =>
    chat.listen(async (each) => {
      state.arrived += 1;
      await state.gate;
      heard.push(each);
    });
  return {
    chat,
    listen,
    /** Everything handed in, duplicates too. */
    heard,
    /** Told apart by id, as the inbox does. */
    inbox: (): Heard[] => [...new Map(heard.map((each) => [each.id, each])).values()],
    texts: (): string[] => heard.flatMap(({ event }) => (event.is === 'message' ? [event.text] : [])),
    logs,
    state,
    slack,
  };
};

/** A loopback Slack with these people and the crew's channel, and the settings that reach it. */
export const startSlackFor = async (mode: BenchOptions['mode'], users: readonly string[]) => {
  const { intake, eventsUrl } = await settingsFor(mode);
  const { scopes } = readManifest().oauth_config;
  const slack = await startSlack({ scopes: scopes.bot, eventsUrl, timing: QUICK, nowMs: Date.now });
  for (const user of users) slack.workspace.users.add(user);
  const settings: SlackSettings = {
    botToken: TOKENS.bot,
    intake,
    slackApiUrl: slack.url,
    sweepEveryMs: HOUR_MS,
  };
  return { slack, settings, crew: slack.workspace.addChannel('C0CREW', 'public') };
};

export const startBench = async (options: Partial<BenchOptions> = {}) => {
  const { mode = 'socket', timing = QUICK, sweepEveryMs = HOUR_MS, aheadMs = 0 } = options;
  const clock = { aheadMs };
  const { scopes = readManifest().oauth_config.scopes.bot } = options;
  const { intake, eventsUrl } = await settingsFor(mode);
  const slack = await startSlack({ scopes, eventsUrl, timing, nowMs: () => Date.now() + clock.aheadMs });
  for (const user of ['U1ANA', 'U2BEN', 'U3CARLA']) slack.workspace.users.add(user);
  const crew = slack.workspace.addChannel('C0CREW', 'public');
  const settings: SlackSettings = {
    botToken: TOKENS.bot,
    intake,
    slackApiUrl: slack.url,
    sweepEveryMs,
  };
  const cursor = memoryCursor();
  const bot = startBot(slack, settings, cursor);
  return {
    ...bot,
    /** Until the first reading of the history is done, so that it does not mix with what the test says. */
    listen: async (): Promise<void> => {
      await bot.listen();
      await waitFor('first reading of the crew channel', () => cursor.seen.has(crew.id));
    },
    crew,
    clock,
    cursor,
    settings,
    eventsUrl,
    close: async (): Promise<void> => {
      await bot.chat.close();
      await slack.close();
    },
  };
};

export type Bench = Awaited<ReturnType<typeof startBench>>;
