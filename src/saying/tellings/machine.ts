import { machineLine } from '../parts/machines.ts';
import { isoOrNull } from '../parts/figures.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';

/** The digger or topper stands, or works again. */
export const machine: TellingKind<'machine'> = {
  text: (telling, voice) => machineLine(telling, voice),
  data: ({ machine: which, runs, untilMs, words, atMs }, iso) => ({
    machine: which,
    runs,
    until: isoOrNull(iso, untilMs),
    words,
    at: iso(atMs),
  }),
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: null,
};
