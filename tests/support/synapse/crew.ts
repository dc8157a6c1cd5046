import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { matrixChat } from '../../../adapters/matrix/chat.ts';
import type { MatrixDeps } from '../../../adapters/matrix/chat.ts';
import type { SyncCursor } from '../../../adapters/matrix/cursor.ts';
import type { MatrixSettings } from '../../../adapters/matrix/settings.ts';
import type { Chat, Heard, Post, PostResult, Said } from '../../../src/ports/chat.ts';
import { waitFor } from '../wait-for.ts';
import { rawUser } from './raw-user.ts';
import type { Account, Synapse } from './synapse.ts';

export const idOf = (result: PostResult): string => {
  if (result.result !== 'sent') throw new Error(`not sent: ${JSON.stringify(result)}`);
  return result.messageId;
};

export const postTo = (to: Post['to'], key: string, said: Said, more: Partial<Post> = {}): Post => ({
  key,
  to,
  said,
  repliesTo: null,
  replaces: null,
  ...more,
});

export const temporaryDirectory = (): string => mkdtempSync(join(tmpdir(), 'fieldbell-matrix-'));

export const memoryCursor = (token: string | null = null): SyncCursor & { token: () => string | null } => {
  let kept = token;
  return {
    load: async () => kept,
    save: async (next) => {
      kept = next;
    },
    token: () => kept,
  };
};

export const settingsFor = (
  url: string,
  bot: Account,
  more: Partial<MatrixSettings> = {},
): MatrixSettings => ({
  homeserver: url,
  user: bot.user,
  login: { by: 'password', password: bot.password },
  directory: temporaryDirectory(),
  encryption: false,
  invitesFrom: ['crew.localhost'],
  keyWaitMs: 60_000,
  ...more,
});

export const depsWith = (more: Partial<MatrixDeps> = {}): MatrixDeps => ({
  cursor: memoryCursor(),
  tell: async () => undefined,
  declined: () => undefined,
  draw: null,
  nowMs: Date.now,
  log: () => undefined,
  ...more,
});

/** A listening bot that notes down what it hears. */
export const startBot = async (settings: MatrixSettings, more: Partial<MatrixDeps> = {}) => {
  const heard: Heard[] = [];
  const chat: Chat = matrixChat(settings, depsWith(more));
  await chat.listen(async (message) => {
    heard.push(message);
  });
  return {
    chat,
    heard,
    /** What was said, edited and taken back, in order. */
    events: () => heard.map(({ event }) => event),
    texts: () => heard.flatMap(({ event }) => (event.is === 'message' ? [event.text] : [])),
    until: (id: string) => waitFor(`message ${id}`, () => heard.find((each) => each.id === id), 120_000),
  };
};

/** More for the making of a room. */
export const ENCRYPTED = {
  initial_state: [
    { type: 'm.room.encryption', state_key: '', content: { algorithm: 'm.megolm.v1.aes-sha2' } },
  ],
};

let crews = 0;

/** A bot's account and two people in a room with it; names are new each time, so that crews share a homeserver. */
export const gatherCrew = async (synapse: Synapse) => {
  crews += 1;
  const [bot, ana, ben] = await Promise.all(
    ['bell', 'ana', 'ben'].map((name) => synapse.register(`${name}${crews}`)),
  );
  if (bot === undefined || ana === undefined || ben === undefined) throw new Error('three accounts');
  const people = await Promise.all([rawUser(synapse.url, ana), rawUser(synapse.url, ben)]);
  const device = await rawUser(synapse.url, bot);
  const room = await people[0].createRoom([bot.user, ben.user]);
  await people[1].join(room);
  await device.join(room);
  return { bot, device, ana: people[0], ben: people[1], room };
};

export type Crew = Awaited<ReturnType<typeof gatherCrew>>;
