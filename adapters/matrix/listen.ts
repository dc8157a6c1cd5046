import type { MatrixClient, MatrixEvent } from 'matrix-js-sdk';
import type { EpochMs } from '../../src/core/units.ts';
import type { Heard, OnHeard } from '../../src/ports/chat.ts';
import type { MatrixIdentity } from './heard.ts';
import { eventOf } from './heard.ts';
import type { DirectRooms } from './rooms.ts';
import { isDirect } from './rooms.ts';
import type { EventsSeen } from './seen.ts';

export const PLATFORM = 'matrix';

interface EarDeps {
  client: MatrixClient;
  me: MatrixIdentity;
  seen: EventsSeen;
  direct: DirectRooms;
  onHeard: OnHeard;
  nowMs: () => EpochMs;
}

/** In a direct room, messages are addressed to the bot without its name. */
const alone = (event: Heard['event']): Heard['event'] =>
  event.is === 'message' ? { ...event, addressed: true } : event;

/** Passes on what a decrypted event says, and resolves when that is stored. */
export const ear =
  ({ client, me, seen, direct, onHeard, nowMs }: EarDeps) =>
  async (event: MatrixEvent): Promise<void> => {
    const roomId = event.getRoomId() ?? '';
    const user = event.getSender() ?? '';
    seen.note(event);
    const said = user === me.user ? null : await eventOf(event, me, seen.find);
    if (said === null) return;
    const isAlone = isDirect(client, roomId);
    if (isAlone) direct.wrote(user, roomId);
    await onHeard({
      platform: PLATFORM,
      id: event.getId() ?? '',
      user,
      userName: client.getRoom(roomId)?.getMember(user)?.rawDisplayName ?? null,
      room: isAlone ? null : roomId,
      sentMs: event.getTs(),
      heardMs: nowMs(),
      event: isAlone ? alone(said) : said,
    });
  };
