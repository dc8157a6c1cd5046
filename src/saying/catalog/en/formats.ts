import type { Formats } from '../formats.ts';

export const enFormats: Formats = {
  locale: 'en-US',
  alertTag: 'en-US',
  halves: ['AM', 'PM'],
  marks: { thousands: ',', decimals: '.' },
  date: (month, day) => `${month}/${day}`,
  onDate: (clock, date) => `${clock} on ${date}`,
  articles: (text) => text,
  reasons: {
    mud: ['mud', 'muddy', 'too muddy', 'too much mud', 'wet', 'too wet'],
    rain: ['rain', 'raining', 'too much rain'],
    heat: ['heat', 'hot', 'too hot', 'warm', 'too warm', 'beets too warm', 'roots too warm'],
    frost: ['frost', 'freeze', 'frozen', 'frozen crowns', 'too cold'],
    agreed: ['station agreed', 'station agrees', 'the station agreed', 'station said so'],
  },
  truck: (name) => name,
};
