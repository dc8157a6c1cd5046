import { reasonOf } from '../../src/core/reason.ts';
import type { IRooms, ISyncResponse, MatrixClient } from 'matrix-js-sdk';
import { Method } from 'matrix-js-sdk';
import { z } from 'zod';
import { failureOf } from './failure.ts';
import type { RetryContext } from './patience.ts';
import { persistently } from './patience.ts';

/** One sync. Empty parts are missing, which the SDK's type does not say. */
export type Batch = Omit<ISyncResponse, 'rooms'> & { rooms?: Partial<IRooms> };

/** An event as the homeserver sends it. */
export const rawEvent = z.looseObject({
  event_id: z.string(),
  type: z.string(),
  sender: z.string(),
  origin_server_ts: z.number(),
  state_key: z.string().exactOptional(),
  content: z.record(z.string(), z.unknown()),
});

export type RawEvent = z.output<typeof rawEvent>;

const page = z.object({ chunk: z.array(z.unknown()), end: z.string().optional() });

/** Skips what is not an event: one bad entry must not stop the rest. */
const eventsIn = (chunk: readonly unknown[]): RawEvent[] =>
  chunk.flatMap((each) => rawEvent.safeParse(each).data ?? []);

const PAGE = 100;

/**
 * All events of a room between two sync tokens, oldest first. The specification allows sync tokens as bounds of
 * /messages. The last page has no `end`; an empty page need not be the last.
 */
const pagesBetween = async (
  client: MatrixClient,
  room: string,
  from: string,
  to: string,
  patience: RetryContext,
) => {
  const events: RawEvent[] = [];
  for (let at: string | undefined = from; at !== undefined;) {
    const query = { from: at, to, dir: 'f', limit: PAGE };
    const path = `/rooms/${encodeURIComponent(room)}/messages`;
    const answer = page.parse(
      await persistently(patience, `Reading missed messages of ${room}`, () =>
        client.http.authedRequest(Method.Get, path, query),
      ),
    );
    events.push(...eventsIn(answer.chunk));
    at = answer.end === at ? undefined : answer.end;
  }
  return events;
};

const membership = z.object({ membership: z.string() });
const previous = z.object({ unsigned: z.object({ prev_content: membership }) });

/** The events from while the bot was in the room; what it can see from before a join is not meant for it. */
export const whileInRoom = (events: readonly RawEvent[], me: string): RawEvent[] => {
  let kept: RawEvent[] = [];
  let before: RawEvent[] = [];
  for (const event of events) {
    before.push(event);
    if (event.type !== 'm.room.member' || event.state_key !== me) continue;
    const was = previous.safeParse(event).data?.unsigned.prev_content.membership ?? 'leave';
    const is = membership.safeParse(event.content).data?.membership;
    if (was === 'join') kept = [...kept, ...before];
    if (was === 'join' || is === 'join') before = [];
  }
  return [...kept, ...before];
};

/** The events of one sync, room by room; `since` is the token before it, null = there was none. */
export const eventsOf = async (
  client: MatrixClient,
  batch: Batch,
  since: string | null,
  isFirst: boolean,
  patience: RetryContext,
): Promise<{ room: string; events: RawEvent[] }[]> => {
  const me = client.getSafeUserId();
  // The very first start: nothing said before it is meant for the bot.
  if (since === null) return [];
  const read = async (room: string, timeline: { limited?: boolean; events: unknown[] }) => {
    // The first sync of a process has only the newest event of each room, and later ones may have a gap.
    const all =
      isFirst || timeline.limited === true
        ? await pagesBetween(client, room, since, batch.next_batch, patience)
        : eventsIn(timeline.events);
    return { room, events: whileInRoom(all, me) };
  };
  const rooms = { ...batch.rooms?.leave, ...batch.rooms?.join };
  const results: { room: string; events: RawEvent[] }[] = [];
  for (const [room, { timeline }] of Object.entries(rooms)) {
    try {
      results.push(await read(room, timeline));
    } catch (error) {
      if (failureOf(error).result !== 'gone') throw error;
      patience.log('warn', `Missed messages of ${room} can't be read: ${reasonOf(error)}.`);
    }
  }
  return results;
};
