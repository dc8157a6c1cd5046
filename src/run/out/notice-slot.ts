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

/** The slots of all messages of one stop begin so, up to the "#". */
export const noticeSeries = (event: string): string => `notice ${event}`;

/** Null = the slot is of no notice. */
export const eventOfSlot = (slot: string | null): string | null =>
  /^notice ([^#]+)#/.exec(slot ?? '')?.[1] ?? null;

/**
 * All messages of one stop are a series, so that an undelivered one is not sent after the stop has ended. A later time
 * and new confirmations change the message in place; an earlier time, the order and the end are messages of their own.
 */
export const noticeSlot = (telling: NoticeTelling): string =>
  `${noticeSeries(telling.step.event)}#${stateOf(telling)}`;
