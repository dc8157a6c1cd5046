import type { ICreateRoomOpts, MatrixClient, Room } from 'matrix-js-sdk';
import { ClientEvent, Preset } from 'matrix-js-sdk';
import { isInStep } from './connect/link.ts';

/** A room with one other person, joined or invited, is a direct conversation. */
const isForTwo = (room: Room): boolean => room.getInvitedAndJoinedMemberCount() <= 2;

export const isDirect = (client: MatrixClient, roomId: string): boolean => {
  const room = client.getRoom(roomId);
  return room !== null && isForTwo(room);
};

export const isMember = (room: Room | null): room is Room => room?.getMyMembership() === 'join';

/** Must stay below the outbox lease (LEASE_MS, src/run/out/deliver.ts). Grade: chosen. */
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

/** The bot's direct rooms. `encrypted`: whether rooms that it creates are encrypted. */
export const directRooms = (client: MatrixClient, encrypted: boolean, closing: AbortSignal) => {
  /** The room in which each person last wrote. */
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

  /** Until a sync brings the room, the SDK does not know that it is encrypted, and would send unencrypted. */
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
    if (!isThere()) throw new Error(`The new room ${roomId} did not appear in a sync.`);
  };

  /** Not while out of sync: a room created earlier may not have arrived yet, and the person would have two. */
  const make = async (user: string): Promise<string> => {
    if (!isInStep(client))
      throw new Error(`A room with ${user} can't be created until the homeserver is back.`);
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
