import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { startBench } from '../../support/slack/bench.ts';
import { readManifest } from '../../support/slack/manifest.ts';
import { METHODS } from '../../support/slack/methods.ts';
import { waitFor } from '../../support/wait-for.ts';

const ADAPTER = new URL('../../../adapters/slack/', import.meta.url);

/** Documented scopes of the events that the app subscribes to (https://docs.slack.dev/reference/events/NAME). */
const EVENT_SCOPES: Record<string, string | null> = {
  app_home_opened: null,
  'message.channels': 'channels:history',
  'message.groups': 'groups:history',
  'message.im': 'im:history',
};

/** The client's `filesUploadV2` stands for these two (https://docs.slack.dev/tools/node-slack-sdk/web-api/). */
const UPLOAD = ['files.getUploadURLExternal', 'files.completeUploadExternal'];

const calledMethods = (): string[] => {
  const sources = readdirSync(ADAPTER).map((name) => readFileSync(new URL(name, ADAPTER), 'utf8'));
  const uploads = sources.some((source) => source.includes('web.filesUploadV2(')) ? UPLOAD : [];
  const names = sources.flatMap((source) =>
    [...source.matchAll(/\bweb\.([a-z]+)\.([a-zA-Z]+)\(/g)].map(
      ([, group, method]) => `${String(group)}.${String(method)}`,
    ),
  );
  return [...new Set([...names, ...uploads])];
};

const scopesOf = (method: string): string[] => {
  const known = METHODS[method];
  if (known === undefined) throw new Error(`${method} has no scopes in methods.ts.`);
  if (known.scopes === null) return [];
  return typeof known.scopes === 'string' ? [known.scopes] : Object.values(known.scopes);
};

describe('the app manifest', () => {
  const manifest = readManifest();
  const events = manifest.settings.event_subscriptions.bot_events;

  test('asks for exactly the scopes that the called methods, the events and the command need', () => {
    const methods = calledMethods();
    expect(methods).toContain('chat.postMessage');
    const needed = [
      ...methods.flatMap(scopesOf),
      ...events.flatMap((event) => EVENT_SCOPES[event] ?? []),
      'commands',
    ];
    expect(new Set(manifest.oauth_config.scopes.bot)).toEqual(new Set(needed));
  });

  test('every event has a documented scope, or none', () => {
    expect(events.filter((event) => !(event in EVENT_SCOPES))).toEqual([]);
  });

  test('people can write to the bot', () => {
    expect(manifest.features.app_home).toMatchObject({
      messages_tab_enabled: true,
      messages_tab_read_only_enabled: false,
    });
    expect(manifest.settings).toMatchObject({
      socket_mode_enabled: true,
      interactivity: { is_enabled: true },
    });
  });

  test('without a scope Slack refuses, and the log says so', async () => {
    const { bot } = manifest.oauth_config.scopes;
    const bench = await startBench({ scopes: bot.filter((scope) => scope !== 'im:read') });
    await bench.chat.listen(async () => undefined);
    await waitFor('log line', () => bench.logs.some((line) => line.includes('missing_scope')));
    await bench.close();
  });
});
