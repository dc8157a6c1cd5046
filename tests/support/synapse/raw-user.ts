import { randomUUID } from 'node:crypto';
import type { Account } from './synapse.ts';

export interface RawEvent {
  event_id: string;
  type: string;
  sender: string;
  origin_server_ts: number;
  content: Record<string, unknown>;
  unsigned?: Record<string, unknown>;
}

type Body = Record<string, unknown>;

interface Sync {
  next_batch: string;
  rooms?: { join?: Record<string, { timeline: { events: RawEvent[] } }> };
}

const enc = encodeURIComponent;

/** A person with an app of their own: plain HTTP, nothing of the adapter or its SDK. */
export const rawUser = async (url: string, { user, password }: Account) => {
  const call = async (method: string, path: string, body?: Body, token?: string): Promise<Body> => {
    const answer = await fetch(`${url}/_matrix/client/v3${path}`, {
      method,
      headers: token === undefined ? {} : { Authorization: `Bearer ${token}` },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    const json = (await answer.json()) as Body;
    if (!answer.ok) throw new Error(`${method} ${path}: ${answer.status} ${JSON.stringify(json)}`);
    return json;
  };

  const login = { type: 'm.login.password', identifier: { type: 'm.id.user', user }, password };
  const { access_token: token } = (await call('POST', '/login', login)) as { access_token: string };
  const as = (method: string, path: string, body?: Body): Promise<Body> => call(method, path, body, token);

  const send = async (room: string, type: string, content: Body): Promise<string> => {
    const path = `/rooms/${enc(room)}/send/${type}/${randomUUID()}`;
    return ((await as('PUT', path, content)) as { event_id: string }).event_id;
  };
  const text = (body: string): Body => ({ msgtype: 'm.text', body, 'm.mentions': {} });

  let since: string | null = null;
  return {
    user,
    token,
    send,
    say: (room: string, body: string, more: Body = {}) =>
      send(room, 'm.room.message', { ...text(body), ...more }),
    edit: (room: string, of: string, body: string) =>
      send(room, 'm.room.message', {
        ...text(`* ${body}`),
        'm.new_content': text(body),
        'm.relates_to': { rel_type: 'm.replace', event_id: of },
      }),
    react: (room: string, to: string, key: string) =>
      send(room, 'm.reaction', { 'm.relates_to': { rel_type: 'm.annotation', event_id: to, key } }),
    redact: async (room: string, id: string): Promise<string> => {
      const path = `/rooms/${enc(room)}/redact/${enc(id)}/${randomUUID()}`;
      return ((await as('PUT', path, {})) as { event_id: string }).event_id;
    },
    createRoom: async (invite: readonly string[], more: Body = {}): Promise<string> =>
      ((await as('POST', '/createRoom', { preset: 'private_chat', invite, ...more })) as { room_id: string })
        .room_id,
    invite: (room: string, guest: string) => as('POST', `/rooms/${enc(room)}/invite`, { user_id: guest }),
    join: (room: string) => as('POST', `/rooms/${enc(room)}/join`, {}),
    leave: (room: string) => as('POST', `/rooms/${enc(room)}/leave`, {}),
    event: async (room: string, id: string): Promise<RawEvent> =>
      (await as('GET', `/rooms/${enc(room)}/event/${enc(id)}`)) as unknown as RawEvent,
    /** The newest events of a room, oldest first. */
    history: async (room: string): Promise<RawEvent[]> => {
      const { chunk } = (await as('GET', `/rooms/${enc(room)}/messages?dir=b&limit=500`)) as {
        chunk: RawEvent[];
      };
      return chunk.reverse();
    },
    /** Follows the room, as an app does, until a message with that text comes. */
    hears: async (room: string, body: string): Promise<void> => {
      for (;;) {
        const query = `timeout=10000${since === null ? '' : `&since=${enc(since)}`}`;
        const sync = (await as('GET', `/sync?${query}`)) as unknown as Sync;
        since = sync.next_batch;
        const events = sync.rooms?.join?.[room]?.timeline.events ?? [];
        if (events.some(({ content }) => content['body'] === body)) return;
      }
    },
    /** Ids of the rooms that invite the user, and by whom each. */
    invitations: async (): Promise<string[]> => {
      const { rooms } = (await as('GET', '/sync?timeout=0')) as { rooms?: { invite?: Body } };
      return Object.keys(rooms?.invite ?? {});
    },
    /** The public keys of another user. */
    keysOf: (other: string) => as('POST', '/keys/query', { device_keys: { [other]: [] } }),
    /** Ids of the events that ring on the user's phone, as the homeserver sees it. */
    rung: async (): Promise<string[]> => {
      const { notifications } = (await as('GET', '/notifications?only=highlight&limit=100')) as {
        notifications: { event: RawEvent }[];
      };
      return notifications.map(({ event }) => event.event_id);
    },
    power: (room: string, users: Record<string, number>) =>
      as('PUT', `/rooms/${enc(room)}/state/m.room.power_levels`, { users: { [user]: 100, ...users } }),
    /** A file that stands in an event: https://spec.matrix.org/latest/client-server-api/#content-repository */
    download: async (mxc: string): Promise<Uint8Array> => {
      const address = `${url}/_matrix/client/v1/media/download/${mxc.slice('mxc://'.length)}`;
      const answer = await fetch(address, { headers: { Authorization: `Bearer ${token}` } });
      if (!answer.ok) throw new Error(`${mxc}: ${answer.status}`);
      return new Uint8Array(await answer.arrayBuffer());
    },
    joined: async (): Promise<string[]> =>
      ((await as('GET', '/joined_rooms')) as { joined_rooms: string[] }).joined_rooms,
    members: async (room: string): Promise<Record<string, unknown>> =>
      ((await as('GET', `/rooms/${enc(room)}/joined_members`)) as { joined: Body }).joined,
  };
};

export type RawUser = Awaited<ReturnType<typeof rawUser>>;
