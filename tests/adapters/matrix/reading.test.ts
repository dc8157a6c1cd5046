import { ConnectionError, MatrixError } from 'matrix-js-sdk';
import { describe, expect, test } from 'vitest';
import type { RawEvent } from '../../../adapters/matrix/catch-up.ts';
import { whileInRoom } from '../../../adapters/matrix/catch-up.ts';
import { failureOf } from '../../../adapters/matrix/failure.ts';
import { mayInvite } from '../../../adapters/matrix/invites.ts';
import { afterName, withoutQuote } from '../../../adapters/matrix/text.ts';

const BOT = '@bell:crew.localhost';

const event = (id: string, change: Partial<RawEvent> = {}): RawEvent => ({
  event_id: id,
  type: 'm.room.message',
  sender: '@ana:crew.localhost',
  origin_server_ts: 1,
  content: {},
  ...change,
});
const own = (id: string, is: string, was: string): RawEvent => ({
  ...event(id, { type: 'm.room.member', state_key: BOT, content: { membership: is } }),
  unsigned: { prev_content: { membership: was } },
});
const ids = (events: readonly RawEvent[]): string[] =>
  whileInRoom(events, BOT)
    .filter(({ type }) => type === 'm.room.message')
    .map(({ event_id }) => event_id);

describe('what was said while the bot was in the room', () => {
  test('all of it, where it did not come or go', () => {
    expect(ids([event('1'), event('2')])).toEqual(['1', '2']);
  });
  test('nothing from before it joined', () => {
    expect(
      ids([
        event('old'),
        own('i', 'invite', 'leave'),
        event('old 2'),
        own('j', 'join', 'invite'),
        event('1'),
      ]),
    ).toEqual(['1']);
  });
  test('what was said before it was removed and after it came back', () => {
    const events = [
      event('1'),
      own('l', 'leave', 'join'),
      event('between'),
      own('j', 'join', 'leave'),
      event('2'),
    ];
    expect(ids(events)).toEqual(['1', '2']);
  });
  test('a new name of the bot is no coming', () => {
    expect(ids([event('1'), own('n', 'join', 'join'), event('2')])).toEqual(['1', '2']);
  });
});

describe('words of a message', () => {
  // Form of the fallback: https://spec.matrix.org/v1.12/client-server-api/#fallbacks-for-rich-replies
  test('the quoted lines of an older client are no words of the sender', () => {
    expect(withoutQuote('> <@ana:crew.localhost> where are you\n> and when\n\nin line')).toBe('in line');
    expect(withoutQuote('in line > loaded')).toBe('in line > loaded');
  });
  test('the name of the bot in front is taken off', () => {
    const names = [BOT, 'bell', 'Field Bell (north)'];
    expect(afterName('Bell: loaded', names)).toBe('loaded');
    expect(afterName('@bell loaded', names)).toBe('loaded');
    expect(afterName('@bell:crew.localhost: loaded', names)).toBe('loaded');
    expect(afterName('field bell (north), loaded', names)).toBe('loaded');
    expect(afterName('Bellows broke', names)).toBe(null);
    expect(afterName('ring the bell', names)).toBe(null);
  });
});

describe('whose invitation is taken', () => {
  test('people and servers on the list, by their whole name', () => {
    const allowed = ['@ana:example.org', 'crew.localhost'];
    expect(mayInvite(allowed, '@ana:example.org')).toBe(true);
    expect(mayInvite(allowed, '@ben:crew.localhost')).toBe(true);
    expect(mayInvite(allowed, '@ben:example.org')).toBe(false);
    expect(mayInvite(allowed, '@ben:evil.crew.localhost')).toBe(false);
    expect(mayInvite(allowed, '@crew.localhost:evil.org')).toBe(false);
    expect(mayInvite([], '@ana:example.org')).toBe(false);
  });
});

// Codes and both ways to name the wait: https://spec.matrix.org/v1.12/client-server-api/#rate-limiting
describe('what a refusal means for a message', () => {
  const error = (errcode: string, status: number, more: object = {}, headers?: Headers) =>
    new MatrixError({ errcode, error: 'no', ...more }, status, undefined, undefined, headers);

  test('a wish to wait, in the header before the body', () => {
    const limited = error('M_LIMIT_EXCEEDED', 429, { retry_after_ms: 9000 });
    expect(failureOf(limited)).toEqual({ result: 'retry-after', waitMs: 9000 });
    const headed = error(
      'M_LIMIT_EXCEEDED',
      429,
      { retry_after_ms: 9000 },
      new Headers({ 'Retry-After': '2' }),
    );
    expect(failureOf(headed)).toEqual({ result: 'retry-after', waitMs: 2000 });
    const malformed = error('M_LIMIT_EXCEEDED', 429, {}, new Headers({ 'Retry-After': 'soon' }));
    expect(failureOf(malformed)).toMatchObject({ result: 'retry-after' });
  });
  test('never, where the bot is not in the room', () => {
    expect(failureOf(error('M_FORBIDDEN', 403))).toMatchObject({ result: 'gone' });
  });
  test('perhaps, where the server or the network fails, or the bot was logged out', () => {
    expect(failureOf(error('M_UNKNOWN', 500))).toMatchObject({ result: 'unknown' });
    expect(failureOf(new ConnectionError('fetch failed'))).toMatchObject({ result: 'unknown' });
    expect(failureOf(error('M_UNKNOWN_TOKEN', 401))).toMatchObject({ result: 'unknown' });
  });
});
