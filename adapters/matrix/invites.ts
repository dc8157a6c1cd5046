import type { MatrixClient } from 'matrix-js-sdk';
import { reasonOf } from '../../src/core/reason.ts';
import type { Batch } from './catch-up.ts';
import type { RetryContext } from './patience.ts';
import { persistently } from './patience.ts';

export interface Invite {
  room: string;
  by: string;
}

/** An entry of the list is a person's full id, or a server whose users may all invite. */
export const mayInvite = (allowed: readonly string[], by: string): boolean =>
  allowed.includes(by) || allowed.includes(by.slice(by.indexOf(':') + 1));

export const invitesIn = (batch: Batch, me: string): Invite[] =>
  Object.entries(batch.rooms?.invite ?? {}).flatMap(([room, { invite_state: state }]) => {
    const own = state.events.find((event) => event.type === 'm.room.member' && event.state_key === me);
    return own === undefined ? [] : [{ room, by: own.sender }];
  });

/** Joins if the inviter is on the list, else declines and reports it. Never rejects: the room may be gone by then. */
export const answerInvite = async (
  client: MatrixClient,
  invite: Invite,
  allowed: readonly string[],
  declined: (invite: Invite) => void,
  patience: RetryContext,
): Promise<void> => {
  const welcome = mayInvite(allowed, invite.by);
  const what = `${welcome ? 'Joining' : 'Declining'} ${invite.room}, as ${invite.by} invites`;
  try {
    await persistently(patience, what, async () =>
      welcome ? await client.joinRoom(invite.room) : await client.leave(invite.room),
    );
    if (!welcome) declined(invite);
  } catch (error) {
    if (!patience.closing.aborted) patience.log('warn', `${what} failed: ${reasonOf(error)}.`);
  }
};
