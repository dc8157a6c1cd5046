import { once } from 'node:events';
import type { IncomingMessage } from 'node:http';
import { createServer } from 'node:http';

interface Reply {
  status: number;
  body: Record<string, unknown>;
  headers?: Record<string, string>;
}

export interface Proxy {
  url: string;
  /** Answers a request in the server's place; null = passes it on. Path without the query. */
  answer: (request: { method: string; path: string }) => Reply | null;
  /** Called with each answer of the server; gives what is passed back. Null = the connection is cut. */
  change: (request: { method: string; path: string }, body: Record<string, unknown>) => object | null;
  close: () => Promise<void>;
}

const bodyOf = async (request: IncomingMessage): Promise<Buffer> => {
  const parts: Buffer[] = [];
  for await (const part of request) parts.push(part as Buffer);
  return Buffer.concat(parts);
};

/** Stands between the bot and the homeserver, on loopback, and lets through what a test does not change. */
export const startProxy = async (upstream: string): Promise<Proxy> => {
  const rules: Pick<Proxy, 'answer' | 'change'> = { answer: () => null, change: (_request, body) => body };
  const server = createServer((request, response) => {
    const forward = async (): Promise<void> => {
      const method = request.method ?? 'GET';
      const seen = { method, path: decodeURIComponent((request.url ?? '').split('?')[0] ?? '') };
      const sent = await bodyOf(request);
      const own = rules.answer(seen);
      if (own !== null) {
        response.writeHead(own.status, { 'content-type': 'application/json', ...own.headers });
        response.end(JSON.stringify(own.body));
        return;
      }
      const { authorization } = request.headers;
      const answer = await fetch(`${upstream}${request.url ?? ''}`, {
        method,
        headers: authorization === undefined ? {} : { authorization },
        ...(sent.length === 0 ? {} : { body: sent }),
      });
      const changed = rules.change(seen, (await answer.json()) as Record<string, unknown>);
      if (changed === null) request.socket.destroy();
      else
        response
          .writeHead(answer.status, { 'content-type': 'application/json' })
          .end(JSON.stringify(changed));
    };
    forward().catch(() => request.socket.destroy());
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('no port');
  return Object.assign(rules, {
    url: `http://127.0.0.1:${address.port}`,
    close: async () => {
      server.closeAllConnections();
      server.close();
      await once(server, 'close');
    },
  });
};
