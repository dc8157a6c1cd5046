import type { Log } from '../ports/log.ts';

/** A database connection that breaks must not end the bot. */

/**
 * The driver rolls a transaction back on a connection that is gone, and that write throws where nobody can catch it,
 * after the transaction has been rejected as it should: https://github.com/porsager/postgres/issues/1208
 */
const isWriteToGoneConnection = (error: unknown): boolean =>
  error instanceof TypeError && (error.stack ?? '').includes('postgres/src/connection.js');

/** All other errors that nobody caught end the process, as they do without this. */
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
