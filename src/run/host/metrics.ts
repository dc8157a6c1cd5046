import { collectDefaultMetrics, Counter, Histogram, Registry } from 'prom-client';

/** What the bot counts, and the registry that /metrics prints. */
export interface Metrics {
  registry: Registry;
  /** Messages handed in by a platform; a message that was delivered twice counts twice. */
  heard: Counter<'platform'>;
  facts: Counter<'kind'>;
  /** Messages to the bot of which it could make nothing: `nothing`, or one question or offer: `asked`. */
  unread: Counter<'platform' | 'outcome'>;
  delivered: Counter<'platform'>;
  /** By what the platform answered: `retry-after`, `gone` or `unknown`. */
  deliveryFailures: Counter<'platform' | 'result'>;
  /** From "heard" to "safe in the database", in seconds. */
  handleSeconds: Histogram<'platform'>;
}

// Platforms want their answer within 3 s (https://docs.slack.dev/apis/events-api/), so that is where it must be told apart.
const HANDLE_BUCKETS_S = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2, 3, 5];

/** Fresh counters, with the usual ones of a Node process beside them. Names as the Prometheus guide has them. */
export const createMetrics = (): Metrics => {
  const registry = new Registry();
  const registers = [registry];
  collectDefaultMetrics({ register: registry });
  return {
    registry,
    heard: new Counter({
      name: 'fieldbell_messages_heard_total',
      help: 'Messages heard from chat platforms.',
      labelNames: ['platform'],
      registers,
    }),
    facts: new Counter({
      name: 'fieldbell_facts_total',
      help: 'Facts written to the book.',
      labelNames: ['kind'],
      registers,
    }),
    unread: new Counter({
      name: 'fieldbell_messages_unread_total',
      help: 'Messages that were not understood, or of which the sender was asked what was meant.',
      labelNames: ['platform', 'outcome'],
      registers,
    }),
    delivered: new Counter({
      name: 'fieldbell_messages_delivered_total',
      help: 'Messages that a platform has taken.',
      labelNames: ['platform'],
      registers,
    }),
    deliveryFailures: new Counter({
      name: 'fieldbell_delivery_failures_total',
      help: 'Deliveries that a platform has not taken, by its answer.',
      labelNames: ['platform', 'result'],
      registers,
    }),
    handleSeconds: new Histogram({
      name: 'fieldbell_handle_seconds',
      help: 'Time from hearing a message to having it safe in the database.',
      labelNames: ['platform'],
      buckets: HANDLE_BUCKETS_S,
      registers,
    }),
  };
};
