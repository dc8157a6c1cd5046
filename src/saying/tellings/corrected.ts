import { entriesData, factLines } from '../parts/facts.ts';
import { warningLines } from '../parts/warnings.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase } from '../voice.ts';

export const corrected: TellingKind<'corrected'> = {
  text: ({ facts, warnings }, voice) =>
    [
      phrase(voice, 'receipt.corrected', { what: factLines(facts, voice).join(' ') }),
      ...warningLines(warnings, voice),
    ].join('\n'),
  data: ({ facts, warnings }, iso) => ({
    entries: entriesData(facts, iso),
    warnings: warnings.map(({ warning }) => warning),
  }),
  buttons: noButtons,
  rings: never,
  holdsMin: null,
};
