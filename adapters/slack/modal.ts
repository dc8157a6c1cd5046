import type { types, webApi } from '@slack/bolt';
import { z } from 'zod';

/** Callback id of the form for one weigh ticket. */
export const TICKET_FORM = 'ticket-form';

/** Action ids of the buttons that open it; those of other buttons begin with `say-`. */
export const OPENS_TICKET_FORM = /^open-form-/;

const FORM_WORDS = new Set(['ticket', 'boleta']);

/** "ticket" without a number is not a report: on Slack it asks for the form, elsewhere the reader asks back. */
export const asksForTicketForm = (words: string): boolean => FORM_WORDS.has(words.trim().toLowerCase());

/** The form's fields in the order of the typed line, with the word before each value there. */
const FIELDS = [
  { id: 'serial', word: '', label: 'Serial · Número', number: false },
  { id: 'gross', word: 'gross ', label: 'First weight (gross) · Primer peso (bruto)', number: true },
  { id: 'tare', word: 'tare ', label: 'Second weight (tare) · Segundo peso (tara)', number: true },
  { id: 'truck', word: 'truck ', label: 'Truck · Camión', number: false },
] as const;

const input = ({ id, label, number }: (typeof FIELDS)[number]): types.InputBlock => ({
  type: 'input',
  block_id: id,
  optional: true,
  label: { type: 'plain_text', text: label },
  // A number field opens the phone's digit keys; a serial is text, because its leading zeros count.
  element: number
    ? { type: 'number_input', action_id: 'value', is_decimal_allowed: true, min_value: '0' }
    : { type: 'plain_text_input', action_id: 'value' },
});

/** `channel`: where the answer goes; null = to the person alone. In both languages, because crews have both. */
const ticketForm = (channel: string | null): types.ModalView => ({
  type: 'modal',
  callback_id: TICKET_FORM,
  private_metadata: channel ?? '',
  title: { type: 'plain_text', text: 'Ticket · Boleta' },
  submit: { type: 'plain_text', text: 'OK' },
  close: { type: 'plain_text', text: 'Cancel · Salir' },
  blocks: FIELDS.map(input),
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
  triggerId: string,
  channel: string | null,
): Promise<void> => {
  await web.views.open({ trigger_id: triggerId, view: ticketForm(channel) });
};
