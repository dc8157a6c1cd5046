/** What was told wrong, told right: serials, weights, counts, times, fields. */
import { describe, expect, test } from 'vitest';
import { learnedRankers } from '../../src/command/learned-ranker.ts';
import type { Correction } from '../../src/core/book/facts.ts';
import type { Intent, Reading } from '../../src/core/intent.ts';
import { hearWords } from '../../src/reading/ear.ts';
import { at, chatter, hearing, intents, overheard } from './reading-of.ts';

const NOTHING: Correction = {
  truck: null,
  field: null,
  atMs: null,
  grossLb: null,
  tareLb: null,
  netLb: null,
};
const correct = (set: Partial<Correction>): Intent => ({
  do: 'correct',
  target: { by: 'latest', truck: null },
  set: { ...NOTHING, ...set },
});

const rankers = learnedRankers();
const heard = (text: string, state: string): Reading =>
  hearWords(text, { ...hearing, ear: { ...rankers, state } });
const readings = (reading: Reading): readonly (readonly Intent[])[] =>
  reading.found === 'intents' ? [reading.intents] : reading.found === 'likely' ? reading.readings : [];

describe('in the words of crews', () => {
  test.each<[string, string, Partial<Correction>]>([
    ['serial was 48273 not 48237', 'weighed_out', { serial: '48273' }],
    ['me equivoqué de boleta, es la 48273', 'weighed_out', { serial: '48273' }],
    ['tare was 28120 not 29120', 'weighed_out', { tareLb: 28_120 }],
    ['correction, tare 28120', 'weighed_out', { tareLb: 28_120 }],
    ['la tara era 28120 no 29120', 'weighed_out', { tareLb: 28_120 }],
    ['make that 10:20', 'loaded', { atMs: at('10:20') }],
    ['sorry, 6 ahead, not 16', 'in_line', { count: { value: 6, of: 'line' } }],
    ['no son 16 adelante, son 6', 'in_line', { count: { value: 6, of: 'line' } }],
    ['correction: 13 acres not 31', 'digging', { count: { value: 13, of: 'acres' } }],
    ['I misread it, root temp was 54 not 56', 'none', { count: { value: 54, of: 'root' } }],
    ['no era South 80, era North 40', 'loaded', { field: 'north-40' }],
  ])('%s', (text, state, set) => {
    expect(readings(heard(text, state))).toContainEqual([correct(set)]);
  });
});

describe('with a star', () => {
  test.each<[string, Partial<Correction>]>([
    ['*tare 28120', { tareLb: 28_120 }],
    ['*48213', { serial: '48213' }],
    ['10:20*', { atMs: at('10:20') }],
    ['* north 40', { field: 'north-40' }],
    ['*truck 4', { truck: '4' }],
  ])('%s', (text, set) => {
    expect(overheard(text)).toEqual(intents(correct(set)));
    expect(heard(text, 'weighed_out')).toEqual(intents(correct(set)));
  });

  test('what may be a tare or a serial is asked about', () => {
    expect(heard('*28120', 'weighed_out')).toEqual({
      found: 'likely',
      readings: [[correct({ tareLb: 28_120 })], [correct({ serial: '28120' })]],
    });
  });

  test.each(['*sigh*', '*laughs', '***', '*dropped my phone', 'that was a 5* meal'])(
    '"%s" corrects nothing',
    (text) => {
      expect(overheard(text)).toEqual(chatter);
    },
  );
});

test('of loads and tons, which are reckoned, nothing can be set', () => {
  expect(readings(heard('29 loads not 28', 'none')).flat()).not.toContainEqual(
    expect.objectContaining({ do: 'correct' }),
  );
});
