/** Acres that are dug or topped, in the words of the crew. */
import { expect, test } from 'vitest';
import { learnedRankers } from '../../src/command/learned-ranker.ts';
import type { Intent } from '../../src/core/intent.ts';
import { personById } from '../../src/core/roster.ts';
import { hearWords } from '../../src/reading/ear.ts';
import { sampleRoster } from '../support/roster.ts';
import { hearing, intents, overheard } from './reading-of.ts';

type Acres = Extract<Intent, { do: 'report-acres' }>;
const acres = (count: number, more: Partial<Acres> = {}): Acres => ({
  do: 'report-acres',
  machine: 'digger',
  acres: count,
  field: null,
  atMs: null,
  ...more,
});
const by = (who: string) => ({ speaker: personById(sampleRoster, who) ?? null });

test.each<[string, string, Acres]>([
  ['fritz', '14 acres done', acres(14)],
  ['fritz', '26.5 acres dug at North 40', acres(26.5, { field: 'north-40' })],
  ['fritz', 'twenty two and a half acres done on north 40', acres(22.5, { field: 'north-40' })],
  ['fritz', '9 acres and a half dug', acres(9.5)],
  ['fritz', 'a dozen acres done', acres(12)],
  ['fritz', 'half a dozen acres done since 7:00', acres(6)],
  ['fritz', 'did 31 acres today', acres(31)],
  ['gus', '21 acres done', acres(21, { machine: 'topper' })],
  ['ruth', '18 acres topped at south 80', acres(18, { machine: 'topper', field: 'south-80' })],
  ['fritz', 'llevamos 14 acres en north 40', acres(14, { field: 'north-40' })],
  ['fritz', 'van 16 acres', acres(16)],
  ['fritz', 'hicimos nueve acres y medio', acres(9.5)],
  ['fritz', 'sacamos veintidós acres y medio en north 40', acres(22.5, { field: 'north-40' })],
])('%s: %s', (who, text, intent) => {
  expect(overheard(text, by(who))).toEqual(intents(intent));
});

test.each([
  'how many acres are done',
  'not 14 acres done',
  '14 acres left to dig',
  'we will have 14 acres done',
  '14 acres done yesterday',
  '14 acres of corn',
  'if 14 acres are done',
])('none are told by "%s"', (text) => {
  const reading = overheard(text, by('fritz'));
  expect(reading.found === 'intents' ? reading.intents : []).not.toContainEqual(
    expect.objectContaining({ do: 'report-acres' }),
  );
});

test('more than any field has is no count of acres', () => {
  expect(overheard('79840 acres done', by('fritz')).found).not.toBe('intents');
});

test('the learned reader finds them in looser words', () => {
  const ear = { ...learnedRankers(), state: 'digging' };
  const heard = hearWords('6.5 acres of north 40 to show for the morning', {
    ...hearing,
    ...by('fritz'),
    ear,
  });
  const readings =
    heard.found === 'intents' ? [heard.intents] : heard.found === 'likely' ? heard.readings : [];
  expect(readings.flat()).toContainEqual(acres(6.5, { field: 'north-40' }));
});
