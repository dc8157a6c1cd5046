import type { Formats } from '../formats.ts';

export const esFormats: Formats = {
  locale: 'es-MX',
  alertTag: 'es-US',
  halves: ['a.m.', 'p.m.'],
  // Mexico writes 1,234.5 as the United States do; Spain does not.
  marks: { thousands: ',', decimals: '.' },
  date: (month, day) => `${day}/${month}`,
  onDate: (clock, date) => `${clock} del ${date}`,
  truck: (name) => name.replace(/^truck\b/i, 'Troca'),
};
