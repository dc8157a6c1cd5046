import type { Outgoing } from '../ports/outbox.ts';
import { outbox } from './schema.ts';

/** Messages to one room, or to one person alone, on one platform go out one after another; urgent ones beside the others. */
const laneOf = ({ platform, to, urgent }: Outgoing): string => {
  const place = 'room' in to ? `${platform}/${to.room}` : `${platform}/@${to.user}`;
  return urgent ? `${place}!` : place;
};

export const rowFrom = (operation: string, message: Outgoing): typeof outbox.$inferInsert => ({
  operation,
  lane: laneOf(message),
  key: message.key,
  recipient: message.recipient,
  platform: message.platform,
  to: message.to,
  kind: message.kind,
  cause: message.cause,
  data: message.data,
  said: message.said,
  repliesTo: message.repliesTo,
  slot: message.slot,
  urgent: message.urgent,
  notBeforeMs: message.notBeforeMs,
  expiresMs: message.expiresMs,
});

/** The columns that a deliverer gets, besides the delivered message that this one replaces. */
export const claimedColumns = {
  id: outbox.id,
  operation: outbox.operation,
  key: outbox.key,
  recipient: outbox.recipient,
  platform: outbox.platform,
  to: outbox.to,
  kind: outbox.kind,
  cause: outbox.cause,
  data: outbox.data,
  said: outbox.said,
  repliesTo: outbox.repliesTo,
  slot: outbox.slot,
  urgent: outbox.urgent,
  notBeforeMs: outbox.notBeforeMs,
  expiresMs: outbox.expiresMs,
  attempts: outbox.attempts,
};
