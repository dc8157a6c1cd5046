/** A message's words as rows of the network's table. tests/reading/training/network.py has the same. */
import { fnv1a } from './features.ts';
import { conceptNames, phraseConcepts } from './concepts.ts';
import { NETWORK } from './network-shape.ts';

const {
  pieces: PIECES,
  mostWords: MOST_WORDS,
  mostPieces: MOST_PIECES,
  mostConcepts: MOST_CONCEPTS,
} = NETWORK.shape;

/** Row 0 stands for no piece. */
const pieceOf = (text: string): number => 1 + (fnv1a(text) % (PIECES - 1));

/** By whole characters: an emoji is one. */
const groupsOf = (edged: string): string[] => {
  const characters = Array.from(edged);
  return [2, 3, 4, 5].flatMap((size) =>
    Array.from({ length: Math.max(0, characters.length - size + 1) }, (_, at) =>
      characters.slice(at, at + size).join(''),
    ),
  );
};

const piecesOf = (word: string): number[] => {
  const edged = `<${word}>`;
  const groups = word.startsWith('#') ? [] : groupsOf(edged);
  return [`w${edged}`, ...groups].map(pieceOf).slice(0, MOST_PIECES);
};

/** Of each word its pieces and concepts; one row for a message without words. */
export const rowsOf = (said: readonly string[]): number[][] => {
  const words = said.slice(0, MOST_WORDS);
  if (words.length === 0) return [[pieceOf('w<>')]];
  const rows = words.map(piecesOf);
  for (const { at, length, concepts } of phraseConcepts(words))
    for (const row of rows.slice(at, at + length))
      row.push(...concepts.slice(0, MOST_CONCEPTS).map((concept) => PIECES + conceptNames.indexOf(concept)));
  return rows;
};
