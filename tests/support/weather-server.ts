import { createServer } from 'node:http';
import type { IncomingHttpHeaders, ServerResponse } from 'node:http';

export interface WeatherRequest {
  path: string;
  query: URLSearchParams;
  headers: IncomingHttpHeaders;
}

export type Answer =
  | { status: number; headers: Record<string, string>; body: string }
  /** Never answers. */
  | 'stall'
  /** Breaks the connection in the middle of the body. */
  | 'reset';

export interface WeatherServer {
  baseUrl: string;
  /** Everything that was asked, in order. */
  requests: WeatherRequest[];
  /** What it answers from now on. */
  answer: (rule: (request: WeatherRequest) => Answer) => void;
  close: () => Promise<void>;
}

export const json = (body: unknown, headers: Record<string, string> = {}): Answer => ({
  status: 200,
  headers: { 'content-type': 'application/geo+json', ...headers },
  body: JSON.stringify(body),
});

/** RFC 7807, as the US National Weather Service answers. */
export const problem = (status: number, title: string, detail: string): Answer => ({
  status,
  headers: { 'content-type': 'application/problem+json' },
  body: JSON.stringify({ correlationId: 'c', title, type: 'about:blank', status, detail, instance: 'i' }),
});

export const webPage = (status: number): Answer => ({
  status,
  headers: { 'content-type': 'text/html' },
  body: '<html><head><title>Access Denied</title></head></html>',
});

const send = (response: ServerResponse, answer: Answer): void => {
  if (answer === 'stall') return;
  if (answer === 'reset') {
    response.writeHead(200, { 'content-type': 'application/geo+json', 'content-length': '1000' });
    response.write('{"properties":');
    response.flushHeaders();
    setImmediate(() => response.destroy());
    return;
  }
  response.writeHead(answer.status, answer.headers);
  response.end(answer.status === 304 ? undefined : answer.body);
};

/** A weather service on the loopback interface that speaks the documented shapes, and their faults. */
export const weatherServer = async (): Promise<WeatherServer> => {
  const requests: WeatherRequest[] = [];
  let rule: (request: WeatherRequest) => Answer = () => problem(404, 'Not Found', 'nothing set up');
  const server = createServer((incoming, response) => {
    const url = new URL(incoming.url ?? '/', 'http://localhost');
    const request = { path: url.pathname, query: url.searchParams, headers: incoming.headers };
    requests.push(request);
    send(response, rule(request));
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  const port = typeof address === 'object' ? (address?.port ?? 0) : 0;
  return {
    baseUrl: `http://127.0.0.1:${port}`,
    requests,
    answer: (next) => {
      rule = next;
    },
    close: async () => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
};
