import type { HaulStep } from '../core/book/facts.ts';
import { phrases } from './phrases.ts';
import type { Phrase } from './phrases.ts';
import type { Needs } from './sign.ts';

/** One step of a round trip, as drivers say it. */
export const step = (name: HaulStep, lines: string): Phrase[] =>
  phrases({ topic: 'haul', step: name, tells: false, needs: null, place: false }, lines);

/** Phrases too common to count alone in a shared room. */
export const weakStep = (name: HaulStep, needs: Needs, lines: string): Phrase[] =>
  phrases({ topic: 'haul', step: name, tells: false, needs, place: false }, lines);
