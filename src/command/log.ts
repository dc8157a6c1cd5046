import { pino } from 'pino';
import type { Log } from '../ports/log.ts';

/** Lines of JSON on standard error: standard output is for the chat and for replay's answers. */
export const logTo = (level: string): Log => {
  const logger = pino({ level, base: null }, pino.destination({ fd: 2, sync: true }));
  return {
    info: (what, message) => {
      logger.info(what, message);
    },
    warn: (what, message) => {
      logger.warn(what, message);
    },
    error: (what, message) => {
      logger.error(what, message);
    },
  };
};
