import { format } from 'node:util';
import { logger as sdkOwn } from 'matrix-js-sdk/lib/logger.js';
import type { Logger } from 'matrix-js-sdk/lib/logger.js';
import type { LogLine } from '../../src/ports/log.ts';

/** The first part may have placeholders for the others, such as %s. */
const line = (parts: unknown[]): string =>
  format(...parts.map((part) => (part instanceof Error ? part.message : String(part))));

const dropped = (): void => undefined;

/** How loglevel redirects lines, also for child loggers; the SDK's type does not have it. */
interface Printer {
  methodFactory: () => () => void;
  rebuild: () => void;
}

const isPrinter = (logger: object): logger is Printer => 'methodFactory' in logger && 'rebuild' in logger;

/** Some parts of the SDK ignore the logger that they are given and log to the console. */
export const silenceConsole = (): void => {
  // eslint-disable-next-line @typescript-eslint/no-deprecated -- those parts of the SDK use the deprecated logger
  const printer: object = sdkOwn;
  if (!isPrinter(printer)) return;
  printer.methodFactory = () => dropped;
  printer.rebuild();
};

/** Drops the SDK's lines below warnings, which contain ids and contents of messages by the hundred. */
export const sdkLogger = (log: LogLine): Logger => {
  const logger: Logger = {
    trace: dropped,
    debug: dropped,
    info: dropped,
    warn: (...parts: unknown[]) => {
      log('info', `Matrix SDK: ${line(parts)}`);
    },
    error: (...parts: unknown[]) => {
      log('warn', `Matrix SDK: ${line(parts)}`);
    },
    getChild: () => logger,
  };
  return logger;
};
