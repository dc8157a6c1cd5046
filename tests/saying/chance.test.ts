import { expect, test } from 'vitest';
import { zoneClock } from '../../src/run/host/zone-clock.ts';
import { chanceWords } from '../../src/saying/parts/chance.ts';
import type { Voice } from '../../src/saying/voice.ts';
import { at } from '../support/given.ts';
import { sampleRoster } from '../support/roster.ts';

const voice = (language: Voice['language']): Voice => ({
  language,
  roster: sampleRoster,
  clock: zoneClock,
  nowMs: at('05:00'),
  zone: sampleRoster.zone,
});

test.each([
  [0.98, 'almost sure to pass 60 °F'],
  [0.94, 'likely to pass 60 °F, about 90 %'],
  [0.65, 'likely to pass 60 °F, about 70 %'],
  [0.5, 'may pass 60 °F or not, about 50 %'],
  [0.34, 'not likely to pass 60 °F, about 30 %'],
  [0.02, 'hardly a chance of passing 60 °F'],
])('a chance of %d is %s', (chance, words) => {
  expect(chanceWords(chance, '60 °F', voice('en'))).toBe(words);
});

test('is in words in Spanish too', () => {
  expect(chanceWords(0.81, '60 °F', voice('es'))).toBe('es probable que pase de 60 °F, como 80 %');
  expect(chanceWords(0.98, '60 °F', voice('es'))).toBe('casi seguro que pasa de 60 °F');
});
