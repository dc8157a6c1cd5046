/** The slot of a board, as the outbox stores it: the language it was asked for in, as later changes have no asker. */
import { LANGUAGES } from '../../core/roster.ts';
import type { Language } from '../../core/roster.ts';

export interface BoardSlot {
  language: Language;
  /** The cause of the message that asked for it. */
  cause: string;
}

export const boardSlotText = ({ language, cause }: BoardSlot): string => `board ${language} ${cause}`;

/** Null = the text is no slot of a board. */
export const boardSlotFrom = (text: string): BoardSlot | null => {
  const [, code, cause] = /^board (\S+) (.+)$/s.exec(text) ?? [];
  const language = LANGUAGES.find((known) => known === code);
  return language === undefined || cause === undefined ? null : { language, cause };
};
