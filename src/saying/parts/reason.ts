/** Why somebody stops the dig, goes on with it, or turns loads away. */
import { LANGUAGES } from '../../core/roster.ts';
import type { Language } from '../../core/roster.ts';
import { REASONS } from '../catalog/formats.ts';
import type { Reason } from '../catalog/formats.ts';
import { catalogs } from '../catalog/index.ts';
import { phrase } from '../voice.ts';
import type { Voice } from '../voice.ts';

const folded = (words: string): string =>
  words
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[\s.!]+/g, ' ')
    .trim();

const known = (words: string, language: Language): Reason | undefined =>
  REASONS.find((reason) => catalogs[language].formats.reasons[reason].includes(folded(words)));

/** A common reason in the reader's language; any other in the words in which it was given, quoted. */
export const reasonText = (words: string, voice: Voice): string => {
  const said = words.replace(/[\s.]+$/, '');
  if (known(said, voice.language) !== undefined) return said;
  const [reason] = LANGUAGES.flatMap((language) => known(said, language) ?? []);
  return reason === undefined ? `"${said}"` : phrase(voice, `reason.${reason}`);
};
