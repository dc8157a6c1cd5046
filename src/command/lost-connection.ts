import type { Log } from '../ports/log.ts';

/** A broken database connection must not end the bot. */

/**
 * The driver sends the rollback of a transaction on a connection that is gone, and that write throws where nobody can
 * catch it, after the transaction was rejected as it should be: https://github.com/porsager/postgres/issues/1208
 */
const isWriteToGoneConnection = (error: unknown): boolean =>
  error instanceof TypeError && (error.stack ?? '').includes('postgres/src/connection.js');

/** Any other uncaught error still ends the process. */
export const outliveLostConnections = (log: Log): void => {
  process.on('uncaughtException', (error: unknown) => {
    if (isWriteToGoneConnection(error)) {
      log.warn({}, 'The database connection was lost; a new one is made');
      return;
    }
    console.error(error);
    process.exit(1);
  });
};
