import { DrizzleQueryError } from 'drizzle-orm';

/** The same function, with errors that say what was being done and what went wrong. */
export const explained =
  <Args extends unknown[], Result>(
    doing: string,
    run: (...args: Args) => Promise<Result>,
    onFailure: (failure: Error) => void = () => undefined,
  ) =>
  async (...args: Args): Promise<Result> => {
    try {
      return await run(...args);
    } catch (error) {
      const failure = databaseError(doing, error);
      onFailure(failure);
      throw failure;
    }
  };

/**
 * drizzle's message is the whole statement with all its values, including people's words; what went wrong is in the cause,
 * and which row in Postgres's `detail`.
 */
const databaseError = (doing: string, error: unknown): Error => {
  const cause = error instanceof DrizzleQueryError ? error.cause : error;
  if (!(cause instanceof Error)) return new Error(`${doing}: ${String(cause)}`, { cause });
  const detail = 'detail' in cause && typeof cause.detail === 'string' ? ` ${cause.detail}` : '';
  return new Error(`${doing}: ${cause.message}.${detail}`, { cause });
};
