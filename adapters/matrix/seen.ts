import type { MatrixClient } from 'matrix-js-sdk';
import { MatrixEvent } from 'matrix-js-sdk';
import { z } from 'zod';
import { failureOf } from './failure.ts';
import type { Choice } from './reactions.ts';
import { CHOICES } from './reactions.ts';

/** What must be known about an event that another one refers to. */
export interface SeenEvent {
  sender: string;
  /** The message that it is a reaction to. */
  reactsTo: string | null;
  /** The numbered choices of a message, after its last edit. */
  choices: readonly Choice[];
}

const KEPT = 2000;

const choiceList = z.array(z.object({ key: z.string(), words: z.string() })).catch([]);
const bundle = z.object({ 'm.relations': z.object({ 'm.replace': z.record(z.string(), z.unknown()) }) });

const seenIn = (event: MatrixEvent, content: Record<string, unknown>): SeenEvent => ({
  sender: event.getSender() ?? '',
  reactsTo: event.getType() === 'm.reaction' ? (event.getRelation()?.event_id ?? null) : null,
  choices: choiceList.parse(content[CHOICES]),
});

export const eventsSeen = (client: MatrixClient) => {
  const seen = new Map<string, SeenEvent>();

  const keep = (id: string, what: SeenEvent): void => {
    seen.delete(id);
    seen.set(id, what);
    if (seen.size > KEPT) seen.delete(seen.keys().next().value ?? '');
  };

  /** Remembers a decrypted event; an edit counts only if it is by the same sender. */
  const note = (event: MatrixEvent): void => {
    const content = event.getContent();
    const edited = event.getRelation()?.rel_type === 'm.replace' ? event.getRelation()?.event_id : undefined;
    if (edited === undefined) keep(event.getId() ?? '', seenIn(event, content));
    else if (seen.get(edited)?.sender === event.getSender())
      keep(
        edited,
        seenIn(event, z.record(z.string(), z.unknown()).catch({}).parse(content['m.new_content'])),
      );
  };

  const noteRaw = async (raw: Record<string, unknown>, room: string): Promise<void> => {
    const event = new MatrixEvent({ ...raw, room_id: room });
    await client.decryptEventIfNeeded(event);
    note(event);
  };

  const fetch = async (room: string, id: string): Promise<void> => {
    const raw = await client.fetchRoomEvent(room, id);
    await noteRaw(raw, room);
    const { data } = bundle.safeParse(raw.unsigned);
    if (data !== undefined) await noteRaw(data['m.relations']['m.replace'], room);
  };

  /** Null = there is no such event, or the bot may not see it. Rejects if the homeserver can't be asked. */
  const find = async (room: string, id: string): Promise<SeenEvent | null> => {
    try {
      if (!seen.has(id)) await fetch(room, id);
    } catch (error) {
      if (failureOf(error).result !== 'gone') throw error;
    }
    return seen.get(id) ?? null;
  };

  return { note, find };
};

export type EventsSeen = ReturnType<typeof eventsSeen>;
