import { entriesData, factLines } from '../parts/facts.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase } from '../voice.ts';

/** An edit that could not be read. */
export const editUnread: TellingKind<'edit-unread'> = {
  text: ({ facts }, voice) =>
    phrase(voice, 'receipt.edit-stands', { what: factLines(facts, voice).join(' ') }),
  data: ({ facts }, iso) => ({ entries: entriesData(facts, iso) }),
  buttons: noButtons,
  rings: never,
  holdsMin: null,
};
