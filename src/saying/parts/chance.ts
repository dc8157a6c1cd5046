/** Chances in words and round tens: no forecast knows them to the percent. */
import { phrase } from '../voice.ts';
import type { Voice } from '../voice.ts';

/** From that chance (0-1) on, the word for it. Grade: chosen; forecasts told as about 20 or 80 % came so often. */
const WORDS = [
  [0.95, 'sure'],
  [0.65, 'likely'],
  [0.35, 'even'],
  [0.05, 'unlikely'],
] as const;

/** "likely to pass 60 °F, about 80 %"; nearly sure things without a figure. */
export const chanceWords = (chance: number, limit: string, voice: Voice): string => {
  const word = WORDS.find(([least]) => chance >= least)?.[1] ?? 'hardly';
  return phrase(voice, `chance.${word}`, { limit, percent: Math.round(chance * 10) * 10 });
};
