/** Why something failed, in its own words, for the log. */
export const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
