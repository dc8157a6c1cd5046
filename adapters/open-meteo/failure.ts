import { z } from 'zod';
import { MS_PER_HOUR, MS_PER_MINUTE } from '../../src/core/units.ts';

export type OpenMeteoFailure =
  { result: 'refused'; why: string } | { result: 'unavailable'; why: string; retryAfterMs: number };

const reasonSchema = z.object({ error: z.literal(true), reason: z.string() });

const reasonOf = (text: string): string => {
  try {
    return reasonSchema.parse(JSON.parse(text)).reason;
  } catch {
    return 'no reason given';
  }
};

/** Which limit was passed is only in the text; no Retry-After was seen (RateLimiter.swift of open-meteo). Grade: chosen. */
const limitWaitMs = (reason: string): number => {
  if (/hourly/i.test(reason)) return MS_PER_HOUR;
  return /daily/i.test(reason) ? 6 * MS_PER_HOUR : MS_PER_MINUTE;
};

export const failureOf = (status: number, text: string): OpenMeteoFailure => {
  const reason = reasonOf(text);
  const why = `${status} ${reason}`;
  if (status === 429) return { result: 'unavailable', why, retryAfterMs: limitWaitMs(reason) };
  if (status >= 500) return { result: 'unavailable', why, retryAfterMs: MS_PER_MINUTE };
  return { result: 'refused', why };
};

export const unusable = (why: string): OpenMeteoFailure => ({
  result: 'unavailable',
  why,
  retryAfterMs: 5 * MS_PER_MINUTE,
});

/** For an incomplete answer: a time-out, a reset, a name that does not resolve. */
export const broken = (error: unknown, timeoutMs: number): OpenMeteoFailure => {
  const timedOut = error instanceof Error && error.name === 'TimeoutError';
  const cause = error instanceof Error ? (error.cause ?? error) : error;
  const why = timedOut ? `no complete answer within ${timeoutMs} ms` : `no answer: ${String(cause)}`;
  return { result: 'unavailable', why, retryAfterMs: MS_PER_MINUTE };
};
