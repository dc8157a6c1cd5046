import type { Telling } from '../../core/telling.ts';

type NoticeTelling = Extract<Telling, { tell: 'notice' }>;

const stateOf = ({ step, order, asked }: NoticeTelling): string => {
  switch (step.stage) {
    case 'watch':
    case 'all-clear':
      return `${step.stage} ${step.number}`;
    case 'stop':
    case 'update':
      return order ? `order ${asked}` : `advice ${asked}`;
  }
};

/**
 * All messages of one stop are a series, so that an undelivered one is not sent after the stop has ended. A later time
 * and new confirmations change the message in place; an earlier time, the order and the end are messages of their own.
 */
export const noticeSlot = (telling: NoticeTelling): string =>
  `notice ${telling.step.event}#${stateOf(telling)}`;
