import { gotItButton } from '../parts/buttons.ts';
import { headline, noticeData } from '../parts/notice.ts';
import { ANSWER_HOLDS_MIN, always } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase } from '../voice.ts';

/** To one who has not confirmed a notice: its first line comes first, so that a drill says so at once. */
export const reminder: TellingKind<'reminder'> = {
  text: ({ step }, voice) =>
    [headline(step, voice), phrase(voice, 'notice.reminder'), phrase(voice, 'notice.reply')].join('\n'),
  data: ({ step }, iso) => noticeData(step, iso),
  buttons: (_, voice) => [gotItButton(voice)],
  rings: always,
  holdsMin: ANSWER_HOLDS_MIN,
};
