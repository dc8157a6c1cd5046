import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase, ticketExamples } from '../voice.ts';

/** How a ticket is typed, where the chat has no form for it. */
export const ticketForm: TellingKind<'ticket-form'> = {
  text: ({ truck }, voice) =>
    phrase(voice, 'ticket.form', {
      ...ticketExamples(voice),
      truck: truck ?? voice.roster.trucks[0]?.id ?? '1',
    }),
  data: ({ truck }) => ({ truck }),
  buttons: noButtons,
  rings: never,
  holdsMin: null,
};
