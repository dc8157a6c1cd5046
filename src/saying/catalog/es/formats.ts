import type { Formats } from '../formats.ts';

export const esFormats: Formats = {
  locale: 'es-MX',
  alertTag: 'es-US',
  halves: ['a.m.', 'p.m.'],
  // Mexico writes 1,234.5 as the United States do; Spain does not.
  marks: { thousands: ',', decimals: '.' },
  date: (month, day) => `${day}/${month}`,
  onDate: (clock, date) => `${clock} del ${date}`,
  // From 1:00 to 1:59 the hour is one: "la 1:10", "las 2:10".
  articles: (text, values) =>
    text.replaceAll(/\b([Ll])as \{(\w+)\}/g, (all, l: string, name: string) =>
      String(values[name] ?? '').startsWith('1:') ? `${l}a {${name}}` : all,
    ),
  reasons: {
    mud: ['lodo', 'mucho lodo', 'hay lodo', 'mojado', 'muy mojado', 'zoquete'],
    rain: ['lluvia', 'lloviendo', 'esta lloviendo', 'mucha lluvia'],
    heat: [
      'calor',
      'mucho calor',
      'demasiado calor',
      'caliente',
      'muy caliente',
      'por caliente',
      'por calor',
    ],
    frost: ['helada', 'hielo', 'congelado', 'coronas congeladas', 'mucho frio'],
    agreed: ['la estacion esta de acuerdo', 'estacion de acuerdo', 'la estacion dijo que si'],
  },
  truck: (name) => name.replace(/^truck\b/i, 'Troca'),
};
