import { createServer, type RequestListener } from 'node:http';
import type { Registry } from 'prom-client';
import { reasonOf } from '../../core/reason.ts';

/** What is wrong, in words; null = all is well. */
export type Check = () => Promise<string | null>;

export interface HealthDeps {
  host: string;
  /** 0 = any free port. */
  port: number;
  /** By name, such as "database". Quiet chats are no fault: ask whether something answers, not whether it talks. */
  checks: Readonly<Record<string, Check>>;
  /** A check that takes longer is a fault. */
  checkTimeoutMs: number;
  registry: Registry;
}

const after = (ms: number): { fault: Promise<string>; cancel: () => void } => {
  const late = Promise.withResolvers<string>();
  const timer = setTimeout(() => {
    late.resolve(`no answer within ${ms} ms`);
  }, ms);
  return {
    fault: late.promise,
    cancel: () => {
      clearTimeout(timer);
    },
  };
};

const outcome = async (check: Check, timeoutMs: number): Promise<string> => {
  const late = after(timeoutMs);
  try {
    return (await Promise.race([check(), late.fault])) ?? 'ok';
  } catch (error) {
    return reasonOf(error);
  } finally {
    late.cancel();
  }
};

const examined = async ({ checks, checkTimeoutMs }: HealthDeps): Promise<Record<string, string>> =>
  Object.fromEntries(
    await Promise.all(
      Object.entries(checks).map(
        async ([name, check]) => [name, await outcome(check, checkTimeoutMs)] as const,
      ),
    ),
  );

interface Answer {
  status: number;
  type: string;
  body: string;
}

const answerTo = async (deps: HealthDeps, method: string, path: string): Promise<Answer> => {
  if (method !== 'GET') return { status: 405, type: 'text/plain', body: 'Only GET is answered.\n' };
  if (path === '/metrics') {
    return { status: 200, type: deps.registry.contentType, body: await deps.registry.metrics() };
  }
  if (path === '/health') {
    const checks = await examined(deps);
    const well = Object.values(checks).every((found) => found === 'ok');
    const body = JSON.stringify({ status: well ? 'ok' : 'fault', checks });
    return { status: well ? 200 : 503, type: 'application/json', body };
  }
  return { status: 404, type: 'text/plain', body: 'Ask for /health or /metrics.\n' };
};

const handler =
  (deps: HealthDeps): RequestListener =>
  (request, response) => {
    void answerTo(deps, request.method ?? '', request.url?.split('?')[0] ?? '')
      .catch((error: unknown) => ({ status: 500, type: 'text/plain', body: `${String(error)}\n` }))
      .then(({ status, type, body }) => {
        response.writeHead(status, { 'content-type': type, 'cache-control': 'no-store' }).end(body);
      });
  };

/**
 * Answers /health (200, or 503 with what is wrong) and /metrics (Prometheus text). There is no sign-in: keep it on the
 * loopback, or behind one. Rejects where the port is taken. `port` in the result is the one that was opened.
 */
export const startHealth = async (
  deps: HealthDeps,
): Promise<{ port: number; close: () => Promise<void> }> => {
  const server = createServer(handler(deps));
  const { promise: listening, resolve, reject } = Promise.withResolvers<undefined>();
  server.once('error', reject);
  server.listen(deps.port, deps.host, () => {
    resolve(undefined);
  });
  await listening;
  const address = server.address();
  return {
    port: typeof address === 'object' && address !== null ? address.port : deps.port,
    close: async () => {
      server.closeAllConnections();
      await server[Symbol.asyncDispose]();
    },
  };
};
