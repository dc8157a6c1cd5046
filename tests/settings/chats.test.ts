/** The accounts on Slack and Matrix: what is set together, and what is wrong with half of it. */
import { describe, expect, test } from 'vitest';
import { isZone } from '../../src/run/host/zone-clock.ts';
import { readSettings } from '../../src/settings/settings.ts';

const FARM = `name: Farm
zone: America/Boise
people:
  - {name: Ruth, role: grower, addresses: {slack: U1, matrix: "@ruth:example.org"}}
stations:
  - {name: River, air-limit: 60 F, root-limit: 55 F, pilers: 1}
rooms:
  - {id: crew, platform: slack, room: C1}
`;

const read = (env: Record<string, string>) => readSettings(env, FARM, 'farm.yaml', isZone);
const settingsOf = (env: Record<string, string>) => {
  const result = read(env);
  if ('faults' in result) throw new Error(result.faults.join('\n'));
  return result.settings;
};
const faultsOf = (env: Record<string, string>): string[] => {
  const result = read(env);
  return 'faults' in result ? result.faults : [];
};

const BOT = { FIELDBELL_SLACK_BOT_TOKEN: 'xoxb-1' };
const APP = { FIELDBELL_SLACK_APP_TOKEN: 'xapp-1' };
const SECRET = { FIELDBELL_SLACK_SIGNING_SECRET: '8f74' };
const MATRIX = {
  FIELDBELL_MATRIX_HOMESERVER: 'https://matrix.example.org',
  FIELDBELL_MATRIX_USER: '@bell:example.org',
};
const PASSWORD = { FIELDBELL_MATRIX_PASSWORD: 'beets' };
const TOKEN = { FIELDBELL_MATRIX_TOKEN: 'syt_1' };

describe('Slack', () => {
  test('two tokens are enough: the bot calls out over Socket Mode', () => {
    expect(settingsOf({ ...BOT, ...APP }).slack).toEqual({
      botToken: 'xoxb-1',
      intake: { mode: 'socket', appToken: 'xapp-1' },
      apiUrl: null,
    });
  });

  test('with the signing secret Slack calls in, and the Web API may be elsewhere', () => {
    const own = { FIELDBELL_SLACK_HTTP_PORT: '8080', SLACK_API_URL: 'http://127.0.0.1:9/api/' };
    expect(settingsOf({ ...BOT, ...SECRET, ...own }).slack).toEqual({
      botToken: 'xoxb-1',
      intake: { mode: 'http', signingSecret: '8f74', host: '127.0.0.1', port: 8080, path: '/slack/events' },
      apiUrl: 'http://127.0.0.1:9/api/',
    });
  });

  test.each([
    ['no bot token', APP, /^FIELDBELL_SLACK_BOT_TOKEN: is missing, but FIELDBELL_SLACK_APP_TOKEN is set/],
    ['no way in', BOT, /^FIELDBELL_SLACK_APP_TOKEN: is missing: add it, or add .*SIGNING_SECRET/],
    ['both ways in', { ...BOT, ...APP, ...SECRET }, /^FIELDBELL_SLACK_SIGNING_SECRET: is set beside/],
    [
      'an HTTP path in Socket Mode',
      { ...BOT, ...APP, FIELDBELL_SLACK_HTTP_PATH: '/slack' },
      /^FIELDBELL_SLACK_HTTP_PATH: is for HTTP only/,
    ],
    ['the tokens mixed up', { FIELDBELL_SLACK_BOT_TOKEN: 'xapp-9', ...APP }, /begins with xoxb-: copy it/],
    ['a path that is none', { ...BOT, ...SECRET, FIELDBELL_SLACK_HTTP_PATH: 'slack' }, /begins with \//],
    [
      'an address that is none',
      { ...BOT, ...APP, SLACK_API_URL: 'slack.com' },
      /^SLACK_API_URL: is not a web/,
    ],
    [
      'a misspelt name',
      { FIELDBELL_SLACK_TOKEN: 'xoxb-9' },
      /correct it to one of FIELDBELL_SLACK_BOT_TOKEN,/,
    ],
  ])('%s is one fault, and no secret is repeated', (_what, env, expected) => {
    const faults = faultsOf(env);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatch(expected);
    expect(faults[0]).not.toMatch(/xapp-9|xoxb-9/);
  });
});

describe('Matrix', () => {
  test('an account is an address, an id and a way to log in', () => {
    expect(settingsOf({ ...MATRIX, ...PASSWORD }).matrix).toEqual({
      homeserver: 'https://matrix.example.org',
      user: '@bell:example.org',
      login: { by: 'password', password: 'beets' },
      directory: '.fieldbell/matrix',
      encryption: true,
      inviters: null,
    });
    const own = { FIELDBELL_MATRIX_ENCRYPTION: 'off', FIELDBELL_MATRIX_INVITERS: '@ruth:example.org, b.org' };
    expect(settingsOf({ ...MATRIX, ...TOKEN, ...own }).matrix).toMatchObject({
      login: { by: 'token', token: 'syt_1' },
      encryption: false,
      inviters: ['@ruth:example.org', 'b.org'],
    });
  });

  test('a folder for its keys alone is no account', () => {
    expect(settingsOf({ FIELDBELL_MATRIX_DIRECTORY: '/data/matrix' }).matrix).toBeNull();
  });

  test.each([
    ['a password alone', PASSWORD, 2, /^FIELDBELL_MATRIX_HOMESERVER: is missing/],
    ['no way to log in', MATRIX, 1, /^FIELDBELL_MATRIX_PASSWORD: is missing: add it, or add .*TOKEN/],
    ['two ways to log in', { ...MATRIX, ...PASSWORD, ...TOKEN }, 1, /^FIELDBELL_MATRIX_TOKEN: is set beside/],
    ['a short id', { ...MATRIX, ...TOKEN, FIELDBELL_MATRIX_USER: 'bell' }, 1, /not a full Matrix id/],
    ['odd inviters', { ...MATRIX, ...TOKEN, FIELDBELL_MATRIX_INVITERS: '@ruth' }, 1, /^FIELDBELL_MATRIX_INV/],
  ])('%s is a fault', (_what, env, count, expected) => {
    const faults = faultsOf(env);
    expect(faults).toHaveLength(count);
    expect(faults[0]).toMatch(expected);
  });
});

test('addresses on a platform without an account are a warning, not a fault: the bot may be tried without it', () => {
  expect(settingsOf({}).warnings).toEqual([
    'The operation file has slack addresses (room "crew", Ruth), but the bot has no account there: set FIELDBELL_SLACK_BOT_TOKEN.',
    'The operation file has matrix addresses (Ruth), but the bot has no account there: set FIELDBELL_MATRIX_HOMESERVER.',
  ]);
  expect(settingsOf({ ...BOT, ...APP, ...MATRIX, ...TOKEN }).warnings).toEqual([]);
});
