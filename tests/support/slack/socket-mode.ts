/** Slack's side of Socket Mode (https://docs.slack.dev/apis/events-api/using-socket-mode/). */
import { randomUUID } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';
import { z } from 'zod';
import type { Carrier, Timing } from './delivery.ts';
import type { ServerSocket } from './web-socket.ts';
import { acceptWebSocket } from './web-socket.ts';
import { BOT } from './workspace.ts';

const PING_MS = 10_000;

const acknowledgement = z.strictObject({ envelope_id: z.string(), payload: z.unknown() });

export type Goodbye = 'warning' | 'refresh_requested' | 'link_disabled' | 'too_many_websockets';

export interface SocketMode {
  /** Each use of the address opens one connection. */
  newPath: () => string;
  accept: (request: IncomingMessage, stream: Duplex) => void;
  carry: Carrier;
  open: () => number;
  /** How many connections there have been. */
  opened: () => number;
  sayGoodbye: (reason: Goodbye) => void;
  cut: () => void;
  close: () => void;
}

export const socketMode = (timing: Timing): SocketMode => {
  const tickets = new Set<string>();
  const sockets = new Set<ServerSocket>();
  /** An acknowledgement counts on the connection that brought the envelope only; what broke with it is sent again. */
  const waiting = new Map<string, { from: ServerSocket; acked: (payload: unknown) => void }>();
  /** Deliveries that wait for a connection. */
  let arrivals: (() => void)[] = [];
  let opened = 0;

  const onText = (from: ServerSocket, text: string): void => {
    const ack = acknowledgement.parse(JSON.parse(text));
    const envelope = waiting.get(ack.envelope_id);
    if (envelope?.from === from) envelope.acked(ack.payload);
  };

  const hello = () =>
    JSON.stringify({
      type: 'hello',
      num_connections: sockets.size,
      connection_info: { app_id: BOT.appId },
      debug_info: { host: 'loopback', approximate_connection_time: 18_060 },
    });

  const accept: SocketMode['accept'] = (request, stream) => {
    if (!tickets.delete(request.url ?? '')) {
      stream.end('HTTP/1.1 401 Unauthorized\r\n\r\n');
      return;
    }
    const pinging = setInterval(() => {
      socket.ping();
    }, PING_MS).unref();
    const socket = acceptWebSocket(request, stream, {
      text: (text) => {
        onText(socket, text);
      },
      end: () => {
        clearInterval(pinging);
        sockets.delete(socket);
      },
    });
    sockets.add(socket);
    opened += 1;
    socket.send(hello());
    for (const arrived of arrivals.splice(0)) arrived();
  };

  const connection = async (): Promise<void> => {
    if (sockets.size === 0) await new Promise<void>((resolve) => arrivals.push(resolve));
  };

  const carry: Carrier = async (delivery, attempt) => {
    await connection();
    // To any one of the sockets.
    const socket = [...sockets].at(attempt % Math.max(sockets.size, 1));
    if (socket === undefined) return false;
    const id = randomUUID();
    const acked = new Promise<boolean>((resolve) => {
      setTimeout(() => {
        resolve(false);
      }, timing.ackMs).unref();
      waiting.set(id, {
        from: socket,
        acked: (payload) => {
          delivery.answer = payload;
          resolve(true);
        },
      });
    });
    socket.send(
      JSON.stringify({
        envelope_id: id,
        type: delivery.kind,
        payload: delivery.payload,
        accepts_response_payload: delivery.kind !== 'events_api',
        ...(delivery.kind === 'events_api'
          ? { retry_attempt: attempt, retry_reason: attempt === 0 ? '' : 'timeout' }
          : {}),
      }),
    );
    const result = await acked;
    waiting.delete(id);
    return result;
  };

  return {
    newPath: () => {
      const path = `/link?ticket=${randomUUID()}`;
      tickets.add(path);
      return path;
    },
    accept,
    carry,
    open: () => sockets.size,
    opened: () => opened,
    sayGoodbye: (reason) => {
      for (const socket of sockets) socket.send(JSON.stringify({ type: 'disconnect', reason }));
    },
    cut: () => {
      for (const socket of sockets) socket.cut();
    },
    close: () => {
      arrivals = [];
      for (const socket of sockets) socket.cut();
    },
  };
};
