import { entriesData, factLines } from '../parts/facts.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase } from '../voice.ts';

export const takenBack: TellingKind<'taken-back'> = {
  text: ({ facts }, voice) =>
    phrase(voice, 'receipt.taken-back', { what: factLines(facts, voice).join(' ') }),
  data: ({ facts }, iso) => ({ entries: entriesData(facts, iso) }),
  buttons: noButtons,
  rings: never,
  holdsMin: null,
};
