import type { Language } from '../../core/roster.ts';
import { en } from './en/index.ts';
import { es } from './es/index.ts';
import type { LanguageWords } from './language-words.ts';

/** What is understood: the words of every language, whoever writes them. */
export const words: Record<Language, LanguageWords> = { en, es };
