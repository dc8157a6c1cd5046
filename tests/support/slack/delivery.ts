/** Something that Slack delivers to the app until it is acknowledged, and a way to do so. */

export type Kind = 'events_api' | 'interactive' | 'slash_commands';

export interface Delivery {
  kind: Kind;
  payload: Record<string, unknown>;
  /** How often it was sent. */
  attempts: number;
  acked: boolean;
  /** What came back with the acknowledgement. */
  answer: unknown;
}

/** One try; resolves true if it was acknowledged in time. `attempt` 0 = the first. */
export type Carrier = (delivery: Delivery, attempt: number) => Promise<boolean>;

export interface Timing {
  /** Slack's 3 s. */
  ackMs: number;
  /** Slack's "at once, after 1 min, after 5 min". */
  retryAfterMs: readonly number[];
}

const rest = (ms: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, ms).unref();
  });

/** Sends until acknowledged or out of tries. Only events are tried again; for the rest the person sees an error. */
export const deliver = async (delivery: Delivery, carry: Carrier, timing: Timing): Promise<void> => {
  const waits = delivery.kind === 'events_api' ? timing.retryAfterMs : [];
  for (const [attempt, waitMs] of [0, ...waits].entries()) {
    await rest(waitMs);
    delivery.attempts += 1;
    if (await carry(delivery, attempt)) {
      delivery.acked = true;
      return;
    }
  }
};
