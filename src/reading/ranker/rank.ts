/**
 * Which acts a message holds, each with its certainty, by two readers that were learned from labelled messages
 * (tests/reading/training). They give no order and record nothing: they say where to look.
 */
import type { RankedMessage } from './features.ts';

export interface RankedAct<Act> {
  act: Act;
  /** Estimated chance (0-1) that a careful dispatcher would find this act in the message. */
  certainty: number;
}

/** All acts, the likeliest first. */
export type Ranker<Act> = (message: RankedMessage) => RankedAct<Act>[];

/** What two readers find on the average: each errs in its own way. */
export const averaged =
  <Act>(one: Ranker<Act>, other: Ranker<Act>): Ranker<Act> =>
  (message) => {
    const others = new Map(other(message).map(({ act, certainty }) => [act, certainty]));
    return one(message)
      .map(({ act, certainty }) => ({ act, certainty: (certainty + (others.get(act) ?? certainty)) / 2 }))
      .sort((a, b) => b.certainty - a.certainty);
  };
