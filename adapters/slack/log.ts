import { LogLevel } from '@slack/bolt';
import type { Logger } from '@slack/bolt';
import type { LogLine } from '../../src/ports/log.ts';

const line = (parts: unknown[]): string =>
  parts.map((part) => (part instanceof Error ? part.message : String(part))).join(' ');

/** Bolt's debug lines hold message texts and tokens' surroundings: they are dropped. */
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
