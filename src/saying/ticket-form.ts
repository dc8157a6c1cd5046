import { LANGUAGES } from '../core/roster.ts';
import type { TicketForm } from '../ports/chat.ts';
import type { Key } from './catalog/en/index.ts';
import { catalogs } from './catalog/index.ts';

const inAll = (key: Key): string[] => LANGUAGES.map((language) => catalogs[language].texts[key]);

/** One form for all: crews speak several languages, and the platform does not say which one who opens it speaks. */
export const ticketForm: TicketForm = {
  askedBy: inAll('words.ticket'),
  title: inAll('button.ticket'),
  cancel: inAll('form.cancel'),
  labels: {
    serial: inAll('form.serial'),
    gross: inAll('form.gross'),
    tare: inAll('form.tare'),
    truck: inAll('form.truck'),
  },
};
