import { gotItButton } from '../parts/buttons.ts';
import { noticeData, noticeParts } from '../parts/notice.ts';
import type { TellingKind } from '../telling-kind.ts';

/** Advice, a watch and an all-clear ask for nothing; an order is to be confirmed. */
export const notice: TellingKind<'notice'> = {
  text: (telling, voice) => {
    const { headline, why, todo } = noticeParts(telling, voice);
    return [headline, ...why, ...todo].join('\n');
  },
  data: ({ step }, iso) => noticeData(step, iso),
  buttons: ({ order }, voice) => (order ? [gotItButton(voice)] : []),
  rings: ({ rings }) => rings,
  restsOnForecast: ({ step }) => step.source === 'forecast',
  holdsMin: null,
};
