import { HttpApiEvent } from 'matrix-js-sdk';
import type { MatrixClient } from 'matrix-js-sdk';
import { reasonOf } from '../../src/core/reason.ts';
import type { EpochMs } from '../../src/core/units.ts';
import type { Chat, LinkedChat, OnHeard } from '../../src/ports/chat.ts';
import type { DrawPicture } from '../../src/ports/picture.ts';
import type { LogLine } from '../../src/ports/log.ts';
import type { Batch } from './catch-up.ts';
import { clientOf, startSyncing } from './connect/client.ts';
import { isInStep, logLink } from './connect/link.ts';
import type { Session } from './connect/session.ts';
import { openSession } from './connect/session.ts';
import { startCrypto } from './crypto.ts';
import type { SyncCursor } from './cursor.ts';
import type { Invite } from './invites.ts';
import { answerInvite, invitesIn } from './invites.ts';
import { intake } from './intake.ts';
import { ear, PLATFORM } from './listen.ts';
import type { RetryContext } from './patience.ts';
import { poster } from './post.ts';
import type { DirectRooms } from './rooms.ts';
import { directRooms } from './rooms.ts';
import type { EventsSeen } from './seen.ts';
import { eventsSeen } from './seen.ts';
import type { MatrixSettings } from './settings.ts';
import type { UnreadNotice } from './unread.ts';
import { unreadMessages } from './unread.ts';

export interface MatrixDeps {
  cursor: SyncCursor;
  /** Puts a notice of the adapter itself into the outbox: that it can't read a message. */
  tell: (telling: UnreadNotice) => Promise<void>;
  /** Called when an invitation by somebody who is not on the list was declined. */
  declined: (invite: Invite) => void;
  /** Null = pictures are left out; the words with them say the same. */
  draw: DrawPicture | null;
  nowMs: () => EpochMs;
  log: LogLine;
}

type Take = (batch: Batch) => Promise<void>;

/**
 * Matrix as a chat platform. `listen` resolves when everything that was missed has been taken in; it rejects if the
 * homeserver refuses the login, and keeps trying while it is unreachable.
 */
export const matrixChat = (settings: MatrixSettings, deps: MatrixDeps): LinkedChat => {
  const closing = new AbortController();
  const patience: RetryContext = { closing: closing.signal, log: deps.log };
  let post: Chat['post'] = async () => ({ result: 'unknown', why: 'Matrix is not connected yet' });
  let disconnect = async (): Promise<void> => undefined;
  let isSyncing = (): boolean => false;

  return {
    platform: PLATFORM,
    canEdit: true,
    listen: async (onHeard) => {
      const session = await openSession(settings, patience);
      const first = Promise.withResolvers<true>();
      // It may reject before anybody waits for it.
      first.promise.catch(() => undefined);
      const client = clientOf(session, deps.log, async (batch) => {
        try {
          await take(batch);
          first.resolve(true);
        } catch (error) {
          first.reject(error);
          if (!closing.signal.aborted)
            deps.log('error', `Matrix messages can't be read: ${reasonOf(error)}.`);
        }
      });
      client.on(HttpApiEvent.SessionLoggedOut, () => {
        deps.log(
          'error',
          `${settings.homeserver} has logged ${settings.user} out: restart the bot to see what to do.`,
        );
      });
      const seen = eventsSeen(client);
      const direct = directRooms(client, settings.encryption, closing.signal);
      const { take, idle } = taker({ client, session, seen, direct }, settings, deps, onHeard, patience);
      disconnect = async () => {
        client.stopClient();
        await idle();
        session.release();
      };
      if (settings.encryption) await startCrypto(client, session);
      await startSyncing(client, session);
      await first.promise;
      isSyncing = () => isInStep(client);
      deps.log('info', 'Connected to Matrix.');
      logLink(client, deps.log);
      post = poster({ client, direct, seen, draw: deps.draw, log: deps.log });
    },
    post: (message) => post(message),
    fault: () => (isSyncing() ? null : 'not connected to Matrix'),
    close: async () => {
      closing.abort();
      const last = disconnect;
      disconnect = async () => undefined;
      await last();
    },
  };
};

interface Parts {
  client: MatrixClient;
  session: Session;
  seen: EventsSeen;
  direct: DirectRooms;
}

/** Handles each sync: messages, then invitations. */
const taker = (
  { client, session, seen, direct }: Parts,
  { keyWaitMs, invitesFrom }: MatrixSettings,
  { cursor, tell, declined, nowMs }: MatrixDeps,
  onHeard: OnHeard,
  patience: RetryContext,
): { take: Take; idle: () => Promise<void> } => {
  const me = { user: session.user, names: () => namesOf(client, session.user) };
  const hear = ear({ client, me, seen, direct, nowMs, onHeard: (heard) => handIn(heard) });
  const { directory } = session;
  const unread = unreadMessages({ client, directory, keyWaitMs, nowMs, take: hear, tell, patience });
  const handIn: OnHeard = async (heard) => {
    if (heard.event.is === 'deletion') unread.forget(heard.event.of);
    await onHeard(heard);
  };
  const { take, idle } = intake({ client, cursor, hear, unreadable: unread.add, patience });
  const resumed = once(unread.resume);
  return {
    idle,
    take: async (batch) => {
      await resumed();
      await take(batch);
      for (const invite of invitesIn(batch, session.user))
        void answerInvite(client, invite, invitesFrom, declined, patience);
    },
  };
};

const once = (work: () => Promise<void>): (() => Promise<void>) => {
  let done: Promise<void> | null = null;
  return () => (done ??= work());
};

/** The names of the bot: "@bell:example.org", "bell", and its display name. */
const namesOf = (client: MatrixClient, user: string): string[] =>
  [user, user.slice(1, user.indexOf(':')), client.getUser(user)?.displayName ?? ''].filter(
    (name) => name !== '',
  );
