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

/** All concepts, by name. */
export const conceptNames: readonly string[] = [
  ...new Set([...byPhrase.values()].flatMap((all) => [...all])),
].sort();

/** The concepts that each phrase stands for. */
export const phrases: ReadonlyMap<string, readonly string[]> = new Map(
  [...byPhrase].map(([phrase, concepts]) => [phrase, [...concepts]]),
);

export interface PhraseConcepts {
  /** Its first word. */
  at: number;
  /** How many words it has. */
  length: number;
  concepts: readonly string[];
}

/** The phrases that stand for concepts in order; each stretch of words counts once, the longest phrase first. */
export const phraseConcepts = (said: readonly string[]): PhraseConcepts[] => {
  const found: PhraseConcepts[] = [];
  for (let at = 0; at < said.length;) {
    let length = Math.min(MOST_WORDS, said.length - at);
    while (length > 0 && !phrases.has(said.slice(at, at + length).join(' '))) length -= 1;
    if (length > 0)
      found.push({ at, length, concepts: phrases.get(said.slice(at, at + length).join(' ')) ?? [] });
    at += Math.max(1, length);
  }
  return found;
};

/** The concepts of the words in order. */
export const conceptsIn = (said: readonly string[]): string[] =>
  phraseConcepts(said).flatMap(({ concepts }) => concepts);
