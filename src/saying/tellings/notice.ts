import { gotItButton } from '../parts/buttons.ts';
import { noticeData, noticeParts } from '../parts/notice.ts';
import type { TellingKind } from '../telling-kind.ts';

/** A watch and an all-clear ask for nothing; a stop and a new time are to be confirmed. */
export const notice: TellingKind<'notice'> = {
  text: (telling, voice) => {
    const { headline, why, todo } = noticeParts(telling, voice);
    return [headline, ...why, ...todo].join('\n');
  },
  data: ({ step }, iso) => noticeData(step, iso),
  buttons: ({ step }, voice) =>
    step.stage === 'stop' || step.stage === 'update' ? [gotItButton(voice)] : [],
  rings: ({ rings }) => rings,
  holdsMin: null,
};
