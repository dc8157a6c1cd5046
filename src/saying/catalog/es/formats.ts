import type { Formats } from '../formats.ts';

/** Mexico writes 1,234.5 as the United States do; Spain does not. */
export const esFormats: Formats = {
  locale: 'es-MX',
  halves: ['a.m.', 'p.m.'],
  date: (month, day) => `${day}/${month}`,
  onDate: (clock, date) => `${clock} del ${date}`,
  truck: (name) => name.replace(/^truck\b/i, 'Troca'),
};
