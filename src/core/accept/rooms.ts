/** The crew's rooms: those of the operation file, and those that a manager has added by a message in them. */
import { LOCAL, mayManage, roomAt } from '../roster.ts';
import { refused, taken } from './speaking.ts';
import type { Accepted, IntentOf, Speaking } from './speaking.ts';
import type { Harvest } from '../harvest/harvest.ts';

/** Our id for a room that is not in the operation file. */
const idOf = (platform: string, room: string): string => (platform === LOCAL ? room : `${platform}:${room}`);

const isOfFile = (id: string, { fileRoster }: Harvest): boolean =>
  fileRoster.rooms.some((room) => room.id === id);

export const acceptRoom = ({ use }: IntentOf<'use-room'>, harvest: Harvest, speaking: Speaking): Accepted => {
  const { platform, room } = speaking.place;
  if (!mayManage(speaking.speaker)) return refused({ refused: 'not-allowed', what: 'change-lists' });
  if (room === null) return refused({ refused: 'no-room-here' });
  const known = roomAt(harvest.roster, platform, room);
  if (use) {
    if (known) return refused({ refused: 'room-used-already' });
    const put = { id: idOf(platform, room), platform, room };
    return taken(speaking, null, [{ kind: 'list-changed', change: { list: 'rooms', put } }]);
  }
  if (!known) return refused({ refused: 'room-not-used' });
  if (isOfFile(known.id, harvest)) return refused({ refused: 'room-of-file' });
  return taken(speaking, null, [{ kind: 'list-changed', change: { list: 'rooms', remove: known.id } }]);
};
