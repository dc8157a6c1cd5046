/** Why something failed, in the words of the error that was thrown; anything else as text. */
export const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
