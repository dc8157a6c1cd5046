import type { Formats } from '../formats.ts';

export const enFormats: Formats = {
  locale: 'en-US',
  alertTag: 'en-US',
  halves: ['AM', 'PM'],
  marks: { thousands: ',', decimals: '.' },
  date: (month, day) => `${month}/${day}`,
  onDate: (clock, date) => `${clock} on ${date}`,
  truck: (name) => name,
};
