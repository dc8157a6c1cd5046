import { noticeData } from '../parts/notice.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase } from '../voice.ts';

/** Thanks for a confirmation. */
export const seen: TellingKind<'seen'> = {
  text: (_, voice) => phrase(voice, 'notice.seen'),
  data: ({ step }, iso) => noticeData(step, iso),
  buttons: noButtons,
  rings: never,
  holdsMin: null,
};
