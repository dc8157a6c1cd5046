import { gotItButton } from '../parts/buttons.ts';
import { standingHeadline } from '../parts/headline.ts';
import { noticeData } from '../parts/notice.ts';
import { ANSWER_HOLDS_MIN, always, never } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase } from '../voice.ts';

/** To one who has not confirmed a notice: its first line comes first, so that a drill says so at once. */
export const reminder: TellingKind<'reminder'> = {
  text: ({ step }, voice) =>
    [standingHeadline(step, voice), phrase(voice, 'notice.reminder'), phrase(voice, 'notice.reply')].join(
      '\n',
    ),
  data: ({ step }, iso) => noticeData(step, iso),
  buttons: (_, voice) => [gotItButton(voice)],
  rings: always,
  restsOnForecast: never,
  holdsMin: ANSWER_HOLDS_MIN,
};
