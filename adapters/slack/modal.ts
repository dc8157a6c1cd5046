import type { types, webApi } from '@slack/bolt';
import { z } from 'zod';
import type { TicketForm } from '../../src/ports/chat.ts';

/** Callback id of the form for one weigh ticket. */
export const TICKET_FORM = 'ticket-form';

/** Action ids of the buttons that open it; those of other buttons begin with `say-`. */
export const OPENS_TICKET_FORM = /^open-form-/;

/** "ticket" without a number is not a report: on Slack it asks for the form, elsewhere the reader asks back. */
export const asksForTicketForm = (form: TicketForm, words: string): boolean =>
  form.askedBy.includes(words.trim().toLowerCase());

/** The form's fields in the order of the typed line, with the word before each value there. */
const FIELDS = [
  { id: 'serial', word: '', number: false },
  { id: 'gross', word: 'gross ', number: true },
  { id: 'tare', word: 'tare ', number: true },
  { id: 'truck', word: 'truck ', number: false },
] as const;

/** Most that Slack takes of a title or a button (https://docs.slack.dev/reference/views/modal-views). */
const TITLE_CHARS = 24;
const LABEL_CHARS = 2000;

/** The text in as many languages as there is room for, those that write it alike once. */
export const sideBySide = (texts: readonly string[], maxChars: number): string =>
  [...new Set(texts)].reduce((shown, text) => {
    const both = `${shown} · ${text}`;
    return both.length > maxChars ? shown : both;
  });

const input = ({ id, number }: (typeof FIELDS)[number], labels: TicketForm['labels']): types.InputBlock => ({
  type: 'input',
  block_id: id,
  optional: true,
  label: { type: 'plain_text', text: sideBySide(labels[id], LABEL_CHARS) },
  // A number field opens the phone's digit keys; a serial is text, because its leading zeros count.
  element: number
    ? { type: 'number_input', action_id: 'value', is_decimal_allowed: true, min_value: '0' }
    : { type: 'plain_text_input', action_id: 'value' },
});

/** `channel`: where the answer goes; null = to the person alone. */
const viewOf = ({ title, cancel, labels }: TicketForm, channel: string | null): types.ModalView => ({
  type: 'modal',
  callback_id: TICKET_FORM,
  private_metadata: channel ?? '',
  title: { type: 'plain_text', text: sideBySide(title, TITLE_CHARS) },
  submit: { type: 'plain_text', text: 'OK' },
  close: { type: 'plain_text', text: sideBySide(cancel, TITLE_CHARS) },
  blocks: FIELDS.map((field) => input(field, labels)),
});

export const ticketFormValues = z.record(
  z.string(),
  z.record(z.string(), z.object({ value: z.string().nullish() })),
);

/** The filled-in form as the line that a person would have typed: "ticket 48213 gross 79840 tare 29320 truck 3". */
export const ticketWords = (values: z.infer<typeof ticketFormValues>): string => {
  const parts = FIELDS.map(({ id, word }) => ({ word, value: (values[id]?.['value']?.value ?? '').trim() }));
  return ['ticket', ...parts.filter(({ value }) => value !== '').map(({ word, value }) => word + value)].join(
    ' ',
  );
};

/** The trigger expires after 3 s (https://docs.slack.dev/surfaces/modals/): call this before anything slow. */
export const openTicketForm = async (
  web: webApi.WebClient,
  form: TicketForm,
  triggerId: string,
  channel: string | null,
): Promise<void> => {
  await web.views.open({ trigger_id: triggerId, view: viewOf(form, channel) });
};
