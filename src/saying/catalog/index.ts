/** The languages that the bot speaks: texts and formats, complete by the compiler. */
import type { Language } from '../../core/roster.ts';
import { enFormats } from './en/formats.ts';
import { en } from './en/index.ts';
import type { Key } from './en/index.ts';
import { esFormats } from './es/formats.ts';
import { es } from './es/index.ts';
import type { Formats } from './formats.ts';

export const catalogs: Record<Language, { texts: Record<Key, string>; formats: Formats }> = {
  en: { texts: en, formats: enFormats },
  es: { texts: es, formats: esFormats },
};
