import { z } from 'zod';
import { MS_PER_HOUR, MS_PER_MINUTE, MS_PER_SECOND } from '../../src/core/units.ts';

export type NwsFailure =
  /** The grid cell or point does not exist (any more). */
  { got: 'missing'; why: string } | { got: 'refused'; why: string } | Unavailable;

/** `isLimit`: it was asked too often, so nothing else must be asked of it now. */
interface Unavailable {
  got: 'unavailable';
  why: string;
  retryAfterMs: number;
  isLimit?: true;
}

/** RFC 7807; an expired grid says so in the title: https://github.com/weather-gov/api/issues/29. */
const problem = z.object({ title: z.string(), detail: z.string().nullish() });

const saidBy = (text: string): string => {
  try {
    const { title, detail } = problem.parse(JSON.parse(text));
    return detail ? `${title}: ${detail}` : title;
  } catch {
    return 'no reason given';
  }
};

/** No service is left alone longer than this, whatever it asks for. Grade: chosen: then a forecast grows old. */
const LONGEST_WAIT_MS = 6 * MS_PER_HOUR;

/**
 * The wait that `Retry-After` asks for, in seconds or as a date (RFC 9110, 10.2.3), reckoned from the server's own date,
 * 6 hours at most; 0 = it asks for none.
 */
export const waitAsked = (headers: Headers): number => {
  const asked = headers.get('retry-after') ?? '';
  const sentMs = Date.parse(headers.get('date') ?? '');
  const ms = /^\d+$/.test(asked)
    ? Number(asked) * MS_PER_SECOND
    : Date.parse(asked) - (Number.isNaN(sentMs) ? Date.now() : sentMs);
  return ms > 0 ? Math.min(ms, LONGEST_WAIT_MS) : 0;
};

/**
 * What a status means, by https://github.com/weather-gov/api/issues: 403 comes as HTML from the content network, which
 * refuses a missing or blocked User-Agent (#163); the rate limit is not published, and waiting 5 s is said to be enough;
 * 500 often passes at once; 503 lasts 10-15 min (#19, #83) or, with an expired grid, hours (#78). Grade of the waits:
 * chosen, from these.
 */
export const failureOf = (status: number, text: string, askedMs: number): NwsFailure => {
  const why = `${status} ${saidBy(text)}`;
  const wait = (ms: number): Unavailable => ({
    got: 'unavailable',
    why,
    retryAfterMs: Math.max(ms, askedMs),
  });
  if (status === 404) return { got: 'missing', why };
  if (status === 429) return { ...wait(30 * MS_PER_SECOND), isLimit: true };
  if (status === 403) {
    return { got: 'refused', why: '403: the weather service refuses us; check the contact in the settings' };
  }
  if (status === 503) return wait(10 * MS_PER_MINUTE);
  return status >= 500 ? wait(MS_PER_MINUTE) : { got: 'refused', why };
};

/** For a body that is unusable or too old: another server of the network may soon have a better one. Grade: chosen. */
export const unusable = (why: string): NwsFailure => ({
  got: 'unavailable',
  why,
  retryAfterMs: 5 * MS_PER_MINUTE,
});

/** For an incomplete answer: a time-out, a reset, a name that does not resolve. */
export const broken = (error: unknown, timeoutMs: number): NwsFailure => {
  const timedOut = error instanceof Error && error.name === 'TimeoutError';
  const cause = error instanceof Error ? (error.cause ?? error) : error;
  const why = timedOut ? `no complete answer within ${timeoutMs} ms` : `no answer: ${String(cause)}`;
  return { got: 'unavailable', why, retryAfterMs: MS_PER_MINUTE };
};
