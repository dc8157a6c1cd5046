/**
 * A Slack on the loopback interface: Web API, Events API over HTTP, Socket Mode and interactivity, as documented at
 * https://docs.slack.dev, for the real client to be tested against. It can be told to misbehave as the real one does.
 */
import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Carrier, Delivery, Timing } from './delivery.ts';
import { deliver } from './delivery.ts';
import type { World } from './methods.ts';
import { people } from './people.ts';
import { httpCarrier } from './signing.ts';
import { socketMode } from './socket-mode.ts';
import { fileUploads } from './uploads.ts';
import type { PlannedFault } from './web-api.ts';
import { webApi } from './web-api.ts';
import { makeWorkspace } from './workspace.ts';

export interface SlackOptions {
  /** The scopes that the app was installed with. */
  scopes: readonly string[];
  /** Where events go; null = Socket Mode. */
  eventsUrl: string | null;
  timing: Timing;
  nowMs: () => number;
}

export const QUICK: Timing = { ackMs: 3000, retryAfterMs: [0, 20, 50] };

export const startSlack = async ({ scopes, eventsUrl, timing, nowMs }: SlackOptions) => {
  const workspace = makeWorkspace(nowMs);
  const sockets = socketMode(timing);
  const server = createServer();
  const origin = (): string => {
    // A listening TCP server's address is no string.
    const { port } = server.address() as AddressInfo;
    return `127.0.0.1:${String(port)}`;
  };
  const world: World = {
    workspace,
    socketUrl: () => `ws://${origin()}${sockets.newPath()}`,
    uploads: fileUploads(origin),
    homes: new Map(),
    forms: [],
  };
  const api = webApi(world, scopes);
  server.on('request', (request, response) => {
    const [, part, name] = /^\/(api|upload)\/([\w.]+)$/.exec(request.url ?? '') ?? [];
    if (name === undefined) response.writeHead(404).end();
    else if (part === 'upload') void world.uploads.receive(request, response, name);
    else void api.handle(request, response, name);
  });
  server.on('upgrade', (request, stream) => {
    sockets.accept(request, stream);
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');

  const carry: Carrier = eventsUrl === null ? sockets.carry : httpCarrier(eventsUrl, timing);
  const deliveries: Delivery[] = [];

  return {
    url: `http://${origin()}/api/`,
    workspace,
    people: people(workspace),
    sockets,
    /** Everything that was handed to `send`. */
    deliveries,
    /** Calls that arrived, in order. */
    calls: api.calls,
    uploads: world.uploads.all,
    homes: world.homes,
    forms: world.forms,
    /** Delivers until acknowledged. */
    send: (delivery: Delivery): Promise<void> => {
      deliveries.push(delivery);
      return deliver(delivery, carry, timing);
    },
    misbehave: (planned: PlannedFault): void => {
      api.faults.push(planned);
    },
    close: async (): Promise<void> => {
      sockets.close();
      server.closeAllConnections();
      server.close();
      await once(server, 'close');
    },
  };
};

export type LoopbackSlack = Awaited<ReturnType<typeof startSlack>>;
