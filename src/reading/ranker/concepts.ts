/** Concepts in a message: whatever word a crew has for a thing, the ranker sees the thing. */
import { LANGUAGES } from '../../core/roster.ts';
import { words } from '../words/index.ts';

const MOST_WORDS = 4;

/** Concepts by phrase, in all languages. */
const byPhrase = new Map<string, Set<string>>();
for (const language of LANGUAGES)
  for (const [concept, phrases] of Object.entries(words[language].concepts))
    for (const phrase of phrases.split(' | '))
      byPhrase.set(phrase, (byPhrase.get(phrase) ?? new Set()).add(concept));

/** The concepts of the words in order; each stretch of words counts once, the longest phrase first. */
export const conceptsIn = (said: readonly string[]): string[] => {
  const found: string[] = [];
  for (let at = 0; at < said.length;) {
    let length = Math.min(MOST_WORDS, said.length - at);
    while (length > 0 && !byPhrase.has(said.slice(at, at + length).join(' '))) length -= 1;
    if (length > 0) found.push(...(byPhrase.get(said.slice(at, at + length).join(' ')) ?? []));
    at += Math.max(1, length);
  }
  return found;
};
