import type { Fact } from '../../src/core/book/facts.ts';
import type { Heard } from '../../src/ports/chat.ts';
import type { Outgoing } from '../../src/ports/outbox.ts';

export const NOON_MS = Date.UTC(2026, 9, 6, 18);
export const MINUTE_MS = 60_000;

export const heard = (id: string, text = 'loaded'): Heard => ({
  platform: 'local',
  id,
  user: 'ana',
  userName: 'Ana',
  room: 'crew',
  sentMs: NOON_MS - 1000,
  heardMs: NOON_MS,
  event: { is: 'message', text, addressed: false, repliesTo: null },
});

export const fact = (id: string, words = 'fuego 3/4 – "quoted" \\ 🚚'): Fact => ({
  id,
  cause: `local:${id}`,
  atMs: NOON_MS,
  sentMs: NOON_MS,
  heardMs: NOON_MS,
  by: 'ana',
  timeStated: false,
  kind: 'emergency-called',
  words,
  caller: 'Ana',
});

export const outgoing = (key: string, changes: Partial<Outgoing> = {}): Outgoing => ({
  key,
  recipient: { room: 'crew' },
  platform: 'local',
  to: { room: 'C1' },
  kind: 'receipt',
  cause: 'local:m1',
  data: { loads: 3, tons: 66.15 },
  said: { text: `message ${key}`, table: null, buttons: [], picture: null, ring: false, mentions: [] },
  repliesTo: null,
  slot: null,
  urgent: false,
  notBeforeMs: NOON_MS,
  expiresMs: null,
  ...changes,
});
