import { LogLevel } from '@slack/bolt';
import type { Logger } from '@slack/bolt';
import type { LogLine } from '../../src/ports/log.ts';

const line = (parts: unknown[]): string =>
  parts.map((part) => (part instanceof Error ? part.message : String(part))).join(' ');

/** Drops Bolt's debug lines, which contain message texts and parts of requests with tokens. */
export const boltLogger = (log: LogLine): Logger => ({
  debug: () => undefined,
  info: (...parts: unknown[]) => {
    log('info', line(parts));
  },
  warn: (...parts: unknown[]) => {
    log('warn', line(parts));
  },
  error: (...parts: unknown[]) => {
    log('error', line(parts));
  },
  setLevel: () => undefined,
  getLevel: () => LogLevel.INFO,
  setName: () => undefined,
});
