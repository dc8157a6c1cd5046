/** Acts come together: which sets of them a message may mean, and how likely each is. */
import type { Act } from './acts.ts';
import type { RankedAct } from './ranker/rank.ts';

export interface ActSet {
  /** Empty = talk. */
  acts: readonly Act[];
  /** Estimated chance, 0-1, that the message means exactly these. */
  certainty: number;
}

/** More than these together are hardly ever meant; their sets are 2 ** MOST. */
const MOST = 5;

const unlikeAll = (ranked: readonly RankedAct<Act>[]): number =>
  ranked.reduce((chance, { certainty }) => chance * (1 - certainty), 1);

/** All sets of the likeliest acts, the likeliest set first. The acts are taken to come independently of each other. */
export const actSets = (ranked: readonly RankedAct<Act>[]): ActSet[] => {
  const start: ActSet[] = [{ acts: [], certainty: unlikeAll(ranked.slice(MOST)) }];
  return ranked
    .slice(0, MOST)
    .reduce(
      (sets, { act, certainty: chance }) =>
        sets.flatMap(({ acts, certainty }) => [
          { acts, certainty: certainty * (1 - chance) },
          { acts: [...acts, act], certainty: certainty * chance },
        ]),
      start,
    )
    .sort((a, b) => b.certainty - a.certainty);
};
