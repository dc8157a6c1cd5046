/** The Spanish of the crew: hours, reasons, commands, and one word for a thing. Common practice, no source. */
import { describe, expect, it, test } from 'vitest';
import type { Telling } from '../../src/core/telling.ts';
import { es } from '../../src/saying/catalog/es/index.ts';
import { say } from '../../src/saying/say.ts';
import type { Voice } from '../../src/saying/voice.ts';
import { zoneClock } from '../../src/run/host/zone-clock.ts';
import { read } from '../../src/reading/read.ts';
import { at, fact } from '../support/given.ts';
import { heatStep } from '../support/notices.ts';
import { notices } from '../support/notice-tellings.ts';
import { sampleRoster } from '../support/roster.ts';
import { allTellings } from '../support/tellings.ts';

const voice: Voice = {
  language: 'es',
  roster: sampleRoster,
  clock: zoneClock,
  nowMs: at('10:00'),
  zone: sampleRoster.zone,
};
const spanish = (telling: Telling, more: Partial<Voice> = {}): string =>
  say(telling, { ...voice, ...more }).text;

const [notice] = notices;
if (!notice) throw new Error('the sample has a notice');
const ordered = (words: string, more: Parameters<typeof heatStep>[0] = {}): Telling => ({
  ...notice,
  by: 'ruth',
  step: heatStep({ source: 'person', words, ...more }),
});

describe('an hour between 1 and 2 is one', () => {
  it('in notices and in answers', () => {
    const text = spanish(ordered('lodo', { stopToppingMs: at('12:40'), stopAtMs: at('13:10') }));
    expect(text).toContain('paren de deshojar a las 12:40 p.m., paren de sacar a la 1:10 p.m.');
    const closed = fact(
      { kind: 'station-reported', station: 'north-station', open: false, untilMs: at('13:00') },
      '10:00',
    );
    expect(spanish({ tell: 'receipt', facts: [closed], warnings: [], asksCount: false })).toContain(
      'cerrada hasta la 1:00 p.m.',
    );
  });

  it('wherever the time stands', () => {
    const late = allTellings.map((telling) => spanish(telling, { nowMs: at('01:05') }));
    expect(late.filter((text) => /\blas 1:/i.test(text))).toEqual([]);
  });

  it('but not in the words of a person', () => {
    expect(spanish(ordered('paramos a las 1:30 por la lluvia fuerte'))).toContain('"paramos a las 1:30 por');
  });
});

describe('why the dig is stopped', () => {
  it.each([
    ['mud', 'lodo'],
    ['too hot', 'demasiado calor'],
    ['station agreed', 'la estación está de acuerdo'],
  ])('%s is told as %s', (words, cause) => {
    expect(spanish(ordered(words))).toContain(`Por qué: ${cause}.`);
  });

  it('is quoted where it is no known cause', () => {
    expect(spanish(ordered('waiting on the agronomist'))).toContain('Por qué: "waiting on the agronomist".');
  });

  it('is told in English too', () => {
    const english = (words: string): string => say(ordered(words), { ...voice, language: 'en' }).text;
    expect(english('lodo')).toContain('Why: mud.');
    expect(english('mucho calor')).toContain('Why: too hot.');
    expect(english('se rompió la banda')).toContain('Why: "se rompió la banda".');
  });
});

test('one may dig', () => {
  const dig = {
    holds: [],
    coming: [],
    overridden: null,
    closed: [],
    rain: null,
    unforecast: [],
    machinesDown: [],
  };
  expect(spanish({ tell: 'may-dig', dig })).toMatch(/^Pueden sacar: no hay paro\./);
});

describe('commands in the texts', () => {
  const quoted = Object.entries(es).flatMap(([key, text]) =>
    /^(?:help|refused|stranger|question|room|decide)/.test(key)
      ? text.split('"').filter((words, place) => place % 2 === 1 && !words.includes('{'))
      : [],
  );
  const ENGLISH = /\b(?:add|driver|truck|field|line|limit|spanish|station|dig)\b/;

  it('are Spanish, but for the name of the other language', () => {
    expect(quoted.filter((words) => ENGLISH.test(words))).toEqual([]);
  });

  it('are understood', () => {
    const hearing = {
      roster: sampleRoster,
      speaker: sampleRoster.people[1] ?? null,
      zone: sampleRoster.zone,
      sentMs: at('10:00'),
      clock: zoneClock,
      addressed: true,
      ear: null,
    };
    expect(quoted.filter((words) => read(words, hearing).found !== 'intents')).toEqual([]);
  });
});

test.each([
  ['piler', /\bpilers?\b/i],
  ['camión', /\bcami[oó]n(?:es)?\b/i],
  ['máquina (sacadora)', /\bla máquina\b/i],
  ['tú', /"(?:usa|deja) est[ae]/],
])('one word for a thing: never %s', (_, other) => {
  expect(Object.entries(es).filter(([, text]) => other.test(text))).toEqual([]);
});

test('"toneladas" are told to be short ones once, in the help', () => {
  const help = (units: 'short-tons' | 'metric'): string =>
    spanish({ tell: 'help', manager: false }, { roster: { ...sampleRoster, units } });
  expect(help('short-tons')).toContain('Las toneladas son cortas, de 2000 lb.');
  expect(help('metric')).toContain('Las toneladas son métricas.');
  expect(es['unit.tons']).toBe('{tons} toneladas');
});
