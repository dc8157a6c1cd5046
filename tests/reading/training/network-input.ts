/** What network.py learns from, as JSON. */
import { conceptNames, phrases } from '../../../src/reading/ranker/concepts.ts';
import type { RankedMessage } from '../../../src/reading/ranker/features.ts';
import type { Example } from './corpus.ts';

/** A network that is still quick on one core: about 6 million products a message. */
export const SHAPE = {
  width: 128,
  layers: 2,
  heads: 4,
  wider: 256,
  pieces: 1 << 14,
  mostWords: 40,
  mostPieces: 22,
  mostConcepts: 4,
} as const;

const indexIn = (list: readonly string[], one: string): number => Math.max(0, list.indexOf(one));

const unique = (all: readonly string[]): string[] => [...new Set(all)].sort();

export interface NetworkInput {
  shape: typeof SHAPE;
  acts: readonly string[];
  /** The first of both stands for what is not known. */
  states: readonly string[];
  roles: readonly string[];
  concepts: number;
}

/** `tried`: messages whose chances are wanted as well. */
export const networkInput = (
  learning: readonly Example[],
  acts: readonly string[],
  probes: readonly RankedMessage[],
  tried: readonly RankedMessage[],
): NetworkInput => {
  const states = [
    'none',
    ...unique(learning.map(({ message }) => message.state)).filter((one) => one !== 'none'),
  ];
  const roles = [
    'driver',
    ...unique(learning.map(({ message }) => message.role)).filter((one) => one !== 'driver'),
  ];
  const indexed = ({ words, state, role }: RankedMessage) => ({
    words,
    state: indexIn(states, state),
    role: indexIn(roles, role),
  });
  const examples = learning.map(({ message, acts: held, also }) => ({
    ...indexed(message),
    acts: held.map((act) => acts.indexOf(act)),
    fair: unique(also.flat()).map((act) => acts.indexOf(act)),
  }));
  const concepts = Object.fromEntries(
    [...phrases].map(([phrase, all]) => [phrase, all.map((concept) => conceptNames.indexOf(concept))]),
  );
  const input = {
    ...{ shape: SHAPE, acts, states, roles, concepts: conceptNames.length, phrases: concepts, examples },
    ...{ probes: probes.map(indexed), tried: tried.map(indexed) },
  };
  return input;
};
