import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { afterEach, expect, test } from 'vitest';
import { startHealth, type Check } from '../../../src/run/host/health.ts';
import { createMetrics, type Metrics } from '../../../src/run/host/metrics.ts';

const closers: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of closers.splice(0)) await close();
});

const started = async (
  checks: Record<string, Check>,
  metrics: Metrics = createMetrics(),
): Promise<string> => {
  const { registry } = metrics;
  const health = await startHealth({ host: '127.0.0.1', port: 0, checks, checkTimeoutMs: 20, registry });
  closers.push(health.close);
  return `http://127.0.0.1:${health.port}`;
};

const ok: Check = async () => null;

test('all is well where every check says so', async () => {
  const response = await fetch(`${await started({ database: ok, slack: ok })}/health`);
  expect(response.status).toBe(200);
  expect(await response.json()).toEqual({ status: 'ok', checks: { database: 'ok', slack: 'ok' } });
});

test('a fault, an error and a check that never ends are told by name', async () => {
  const url = await started({
    chat: ok,
    forecast: async () => 'no forecast since 06:00',
    database: () => Promise.reject(new Error('connection refused')),
    outbox: () => new Promise(() => undefined),
  });
  const response = await fetch(`${url}/health`);
  expect(response.status).toBe(503);
  expect(await response.json()).toEqual({
    status: 'fault',
    checks: {
      chat: 'ok',
      forecast: 'no forecast since 06:00',
      database: 'connection refused',
      outbox: 'no answer within 20 ms',
    },
  });
});

test('what was counted is printed in the Prometheus text format', async () => {
  const metrics = createMetrics();
  metrics.heard.inc({ platform: 'local' }, 3);
  metrics.facts.inc({ kind: 'ticket-booked' });
  metrics.delivered.inc({ platform: 'local' });
  metrics.deliveryFailures.inc({ platform: 'slack', result: 'retry-after' });
  metrics.handleSeconds.observe({ platform: 'local' }, 0.02);
  const response = await fetch(`${await started({}, metrics)}/metrics`);
  const lines = (await response.text()).split('\n');
  // https://prometheus.io/docs/instrumenting/exposition_formats/: text format 0.0.4.
  expect(response.headers.get('content-type')).toMatch(/^text\/plain; version=0\.0\.4/);
  expect(lines).toEqual(
    expect.arrayContaining([
      '# TYPE fieldbell_messages_heard_total counter',
      'fieldbell_messages_heard_total{platform="local"} 3',
      'fieldbell_facts_total{kind="ticket-booked"} 1',
      'fieldbell_messages_delivered_total{platform="local"} 1',
      'fieldbell_delivery_failures_total{platform="slack",result="retry-after"} 1',
      'fieldbell_handle_seconds_bucket{le="0.01",platform="local"} 0',
      'fieldbell_handle_seconds_bucket{le="0.025",platform="local"} 1',
      'fieldbell_handle_seconds_count{platform="local"} 1',
    ]),
  );
});

test('two bots in one process count apart', async () => {
  const [one, two] = [createMetrics(), createMetrics()];
  one.heard.inc({ platform: 'local' });
  const printed = await (await fetch(`${await started({}, two)}/metrics`)).text();
  expect(printed).not.toContain('fieldbell_messages_heard_total{');
});

test('other paths and methods are refused', async () => {
  const url = await started({ database: ok });
  expect((await fetch(`${url}/`)).status).toBe(404);
  expect((await fetch(`${url}/health`, { method: 'POST' })).status).toBe(405);
  expect((await fetch(`${url}/health?probe=1`)).status).toBe(200);
});

test('a port that is taken is an error, and a closed one answers no more', async () => {
  const url = await started({});
  const port = Number(new URL(url).port);
  const again = {
    host: '127.0.0.1',
    port,
    checks: {},
    checkTimeoutMs: 20,
    registry: createMetrics().registry,
  };
  await expect(startHealth(again)).rejects.toThrow('EADDRINUSE');
  await closers.pop()?.();
  await expect(fetch(`${url}/health`)).rejects.toThrow();
});

test('the container asks with a program of its own, by its exit code', async () => {
  const program = fileURLToPath(new URL('../../../deploy/healthy.mjs', import.meta.url));
  const asked = (url: string): Promise<{ code: number; said: string }> =>
    new Promise((resolve) => {
      const env = { FIELDBELL_HEALTH_PORT: new URL(url).port };
      execFile(process.execPath, [program], { env }, (error, stdout, stderr) => {
        resolve({ code: Number(error?.code ?? 0), said: stdout + stderr });
      });
    });
  const well = await started({ database: ok });
  expect(await asked(well)).toEqual({ code: 0, said: '{"status":"ok","checks":{"database":"ok"}}\n' });
  expect(await asked(await started({ database: async () => 'full' }))).toMatchObject({ code: 1 });
  await closers.shift()?.();
  const gone = await asked(well);
  expect(gone.code).toBe(1);
  expect(gone.said).toMatch(/^No answer from the bot on port \d+: connect ECONNREFUSED/);
});
