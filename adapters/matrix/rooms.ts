import type { ICreateRoomOpts, MatrixClient, Room } from 'matrix-js-sdk';
import { ClientEvent, Preset } from 'matrix-js-sdk';
import { isInStep } from './connect/link.ts';

/** A room of the bot and one other person, who may still be invited, is a talk between the two. */
const isForTwo = (room: Room): boolean => room.getInvitedAndJoinedMemberCount() <= 2;

export const isDirect = (client: MatrixClient, roomId: string): boolean => {
  const room = client.getRoom(roomId);
  return room !== null && isForTwo(room);
};

export const isMember = (room: Room | null): room is Room => room?.getMyMembership() === 'join';

/** Shorter than a message is lent for. */
const APPEARS_WITHIN_MS = 15_000;

const newDirectRoom = (user: string, encrypted: boolean): ICreateRoomOpts => ({
  is_direct: true,
  invite: [user],
  preset: Preset.TrustedPrivateChat,
  initial_state: encrypted
    ? [{ type: 'm.room.encryption', state_key: '', content: { algorithm: 'm.megolm.v1.aes-sha2' } }]
    : [],
});

const membershipIn = async (room: Room, user: string): Promise<string | null> => {
  await room.loadMembersIfNeeded();
  return room.getMember(user)?.membership ?? null;
};

/** Where the bot talks with one person alone. `encrypted`: rooms that it makes are. */
export const directRooms = (client: MatrixClient, encrypted: boolean, closing: AbortSignal) => {
  /** The room where each last wrote. */
  const latest = new Map<string, string>();
  const making = new Map<string, Promise<string>>();

  const existing = async (user: string): Promise<string | null> => {
    const last = client.getRoom(latest.get(user));
    if (isMember(last) && isForTwo(last) && last.getMember(user)?.membership === 'join') return last.roomId;
    let invited: string | null = null;
    for (const room of client.getRooms().filter((each) => isMember(each) && isForTwo(each))) {
      const membership = await membershipIn(room, user);
      if (membership === 'join') return room.roomId;
      if (membership === 'invite') invited = room.roomId;
    }
    return invited;
  };

  /** Until a sync brings the room, the SDK does not know that it is encrypted and would send in the clear. */
  const appeared = async (roomId: string): Promise<void> => {
    const over = AbortSignal.any([closing, AbortSignal.timeout(APPEARS_WITHIN_MS)]);
    const isThere = () =>
      isMember(client.getRoom(roomId)) &&
      (!encrypted || client.getRoom(roomId)?.hasEncryptionStateEvent() === true);
    const looked = new Promise<void>((resolve) => {
      const look = () => {
        if (!isThere() && !over.aborted) return;
        client.off(ClientEvent.Sync, look);
        resolve();
      };
      client.on(ClientEvent.Sync, look);
      over.addEventListener('abort', look, { once: true });
      look();
    });
    await looked;
    if (!isThere()) throw new Error(`The new room ${roomId} did not appear.`);
  };

  /** Out of step, a room that was made before may not have come yet, and the person would have two. */
  const make = async (user: string): Promise<string> => {
    if (!isInStep(client)) throw new Error(`A room with ${user} has to wait for the homeserver.`);
    const { room_id: roomId } = await client.createRoom(newDirectRoom(user, encrypted));
    await appeared(roomId);
    return roomId;
  };

  return {
    wrote: (user: string, roomId: string): void => {
      latest.set(user, roomId);
    },
    with: async (user: string): Promise<string> => {
      const found = await existing(user);
      if (found !== null) return found;
      const made = making.get(user) ?? make(user).finally(() => making.delete(user));
      making.set(user, made);
      return await made;
    },
  };
};

export type DirectRooms = ReturnType<typeof directRooms>;
