/** What becomes of messages that are shown already: boards, and who has seen an order. */
import { reasonOf } from '../../core/reason.ts';
import type { Page } from '../../ports/book.ts';
import type { Outgoing } from '../../ports/outbox.ts';
import type { Sayer } from '../host/bot.ts';
import { boardChanges } from './boards.ts';
import type { Change } from './boards.ts';
import { seenChanges } from './seen-by.ts';

/** A fault in one of them holds up no stop: beside a notice it is logged and left out. */
export const shownChanges = async (page: Page, bot: Sayer, change: Change): Promise<Outgoing[]> => {
  const changes: Outgoing[] = [];
  for (const changesOf of [boardChanges, seenChanges])
    try {
      changes.push(...(await changesOf(page, bot, change)));
    } catch (error) {
      const { cause, messages } = change;
      if (!messages.some(({ kind }) => kind === 'notice')) throw error;
      bot.log.error({ cause, why: reasonOf(error) }, 'What is shown already could not be changed');
    }
  return changes;
};
