import type { FieldMachine } from '../../core/book/facts.ts';
import type { PersonId } from '../../core/roster.ts';
import type { EpochMs } from '../../core/units.ts';
import { personName, phrase, time } from '../voice.ts';
import type { Voice } from '../voice.ts';

interface MachineSaid {
  machine: FieldMachine;
  runs: boolean;
  untilMs: EpochMs | null;
  words: string | null;
  by: PersonId | null;
  atMs: EpochMs;
}

export const untilText = (untilMs: EpochMs | null | undefined, voice: Voice): string =>
  untilMs == null ? '' : phrase(voice, 'receipt.until', { time: time(voice, untilMs) });

/** With who says so, and why. */
export const machineLine = (
  { machine, runs, untilMs, words, by, atMs }: MachineSaid,
  voice: Voice,
): string => {
  const person = by === null ? '' : personName(voice, by);
  const values = { time: time(voice, atMs), person, until: untilText(untilMs, voice) };
  if (runs) return phrase(voice, `machine.runs.${machine}`, values);
  return phrase(voice, `machine.down.${machine}`, {
    ...values,
    words: words ?? phrase(voice, 'truck-down.no-words'),
  });
};
