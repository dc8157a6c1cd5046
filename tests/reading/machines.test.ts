/** The digger and the topper stand still or work again: by their operators, who have no truck, and by others who name them. */
import { describe, expect, test } from 'vitest';
import { learnedRankers } from '../../src/command/learned-ranker.ts';
import type { FieldMachine } from '../../src/core/book/facts.ts';
import type { Intent, Reading } from '../../src/core/intent.ts';
import { personById } from '../../src/core/roster.ts';
import { hearWords } from '../../src/reading/ear.ts';
import { sampleRoster } from '../support/roster.ts';
import { at, hearing, intents, overheard, report } from './reading-of.ts';

type OfMachine = Extract<Intent, { do: 'report-machine' }>;
const of = (machine: FieldMachine, runs: boolean, more: Partial<OfMachine> = {}): OfMachine => ({
  do: 'report-machine',
  machine,
  runs,
  atMs: null,
  untilMs: null,
  words: null,
  ...more,
});

const by = (who: string): { speaker: typeof hearing.speaker } => ({
  speaker: personById(sampleRoster, who) ?? null,
});

describe('by its name', () => {
  test.each<[string, OfMachine]>([
    ['digger down', of('digger', false)],
    ['digger is down, chain broke', of('digger', false, { words: 'chain broke' })],
    ['the topper broke down at 10:05', of('topper', false, { atMs: at('10:05') })],
    ['digger plugged', of('digger', false)],
    ['digger down till 11:30', of('digger', false, { untilMs: at('11:30') })],

    ['digger is fixed', of('digger', true)],
    ['topper back up and running', of('topper', true)],
    ['se descompuso la sacadora', of('digger', false)],
    ['la sacadora está descompuesta', of('digger', false)],
    ['se tapó la sacadora', of('digger', false)],
    ['ya jala la deshojadora', of('topper', true)],
    ['quedó lista la sacadora', of('digger', true)],
  ])('%s', (text, intent) => {
    expect(overheard(text, by('ruth'))).toEqual(intents(intent));
  });
});

describe('by its operator', () => {
  test('in words that would be of a truck from a driver', () => {
    expect(overheard('broke down', by('fritz'))).toEqual(intents(of('digger', false)));
    expect(overheard('back up and running', by('gus'))).toEqual(intents(of('topper', true)));
    expect(overheard('broke down', by('ben'))).toEqual(intents(report('down')));
  });

  test('a truck parked until a time says until when', () => {
    expect(overheard('parked till 11:30')).toEqual(intents(report('parked', { untilMs: at('11:30') })));
    expect(overheard('parked at 10:30')).toEqual(intents(report('parked', { atMs: at('10:30') })));
    // A time to come is the end of it, said so or not.
    expect(overheard('parked, 11:30')).toEqual(intents(report('parked', { untilMs: at('11:30') })));
  });

  test('a truck that he names is a truck', () => {
    expect(overheard('truck 4 broke down', by('fritz'))).toEqual(intents(report('down', { truck: '4' })));
  });

  test('a truck named before is none of what is said of the machine', () => {
    expect(overheard('truck 3 loaded, digger down', by('fritz'))).toEqual(
      intents(report('left-field', { truck: '3' }), of('digger', false)),
    );
  });
});

describe('nothing is said of it by', () => {
  test.each(['shut the digger down', 'digger is not down', 'if the digger is down', 'digger down yesterday'])(
    '%s',
    (text) => {
      const reading = overheard(text, by('ruth'));
      const told = reading.found === 'intents' ? reading.intents : [];
      expect(told.filter((one) => one.do === 'report-machine')).toEqual([]);
    },
  );

  test('one who only stands beside it', () => {
    expect(overheard('stuck in mud by the digger')).toEqual(
      intents(report('down', { words: 'stuck in mud by the digger' })),
    );
  });
});

test('the learned reader means the machine of its operator too', () => {
  const rankers = learnedRankers();
  const heard = (text: string, who: string): Reading =>
    hearWords(text, { ...hearing, ...by(who), ear: { ...rankers, state: 'none' } });
  const told = (reading: Reading): readonly Intent[] =>
    reading.found === 'intents' ? reading.intents : reading.found === 'likely' ? reading.readings.flat() : [];
  expect(told(heard('threw a chain, dead in the row', 'fritz'))).toContainEqual(
    expect.objectContaining({ do: 'report-machine', machine: 'digger', runs: false }),
  );
  expect(told(heard('ya quedó la banda, otra vez andando', 'gus'))).toContainEqual(
    expect.objectContaining({ do: 'report-machine', machine: 'topper', runs: true }),
  );
});
