/** The grammar and the learned reader together. Sentences are ours; what others write is measured by score.test.ts. */
import { describe, expect, test } from 'vitest';
import { learnedRankers } from '../../src/command/learned-ranker.ts';
import type { Reading } from '../../src/core/intent.ts';
import { personById } from '../../src/core/roster.ts';
import { hearWords } from '../../src/reading/ear.ts';
import { sampleRoster } from '../support/roster.ts';
import { hearing, report } from './reading-of.ts';

const rankers = learnedRankers();

const heard = (text: string, state = 'none', who = 'ben', addressed = false): Reading =>
  hearWords(text, {
    ...hearing,
    speaker: personById(sampleRoster, who) ?? null,
    addressed,
    ear: { ...rankers, state },
  });

describe('a message in words of its own', () => {
  test.each([
    ["she's heaped up and I'm rolling off the north 40", 'loading'],
    ['copeteada, jalando del north 40 pa la estacion', 'loading'],
  ])('%s', (text, state) => {
    expect(heard(text, state)).toEqual({
      found: 'intents',
      intents: [report('left-field', { field: 'north-40' })],
    });
  });

  test('is a ticket by its numbers', () => {
    expect(heard('slip 48213, 79,840 in and 29,320 out', 'dumped')).toMatchObject({
      found: 'intents',
      intents: [{ do: 'book-ticket', serial: '48213', grossLb: 79_840, tareLb: 29_320 }],
    });
  });
});

describe('the learned reader', () => {
  test.each(['shut her down everybody, too hot', 'fire em back up, we dig'])(
    'gives no order: "%s" is read back',
    (text) => {
      expect(['likely', 'chatter', 'unclear']).toContain(heard(text, 'none', 'mateo').found);
    },
  );

  test.each([
    'his arm is in the chain and he is not answering',
    'ya no se mueve don Chuy, está tirado junto a la banda',
  ])('raises no alarm, but asks: "%s"', (text) => {
    const reading = heard(text);
    expect(reading.found).toBe('likely');
    expect(reading.found === 'likely' && reading.readings[0]?.[0]?.do).toBe('call-emergency');
  });

  test.each([
    'what a ball game last night',
    'left my jacket at north 40',
    'buenos días a todos',
    'hot enough to fry an egg out here',
  ])('leaves talk among the crew alone: "%s"', (text) => {
    expect(heard(text)).toEqual({ found: 'chatter' });
  });

  test('offers three readings at most, and no two alike', () => {
    const reading = heard('nose to tail out here, could be 9', 'loaded');
    const readings = reading.found === 'likely' ? reading.readings.map((one) => JSON.stringify(one)) : [];
    expect(readings.length).toBeGreaterThan(0);
    expect(readings.length).toBeLessThanOrEqual(3);
    expect(new Set(readings).size).toBe(readings.length);
  });

  test('is not in the way of changes of the lists, drills and the like', () => {
    expect(heard('add truck 6', 'none', 'ruth', true).found).toBe('intents');
    expect(heard('drill: stop digging', 'none', 'ruth', true).found).toBe('intents');
  });

  test('takes at most 40 ms for 400 characters', () => {
    const text = 'well the line at the station is long and I counted 9, then 10, and truck 3 is loaded, '
      .repeat(5)
      .slice(0, 400);
    heard(text);
    // Of the processor, so that a busy machine does not count.
    const before = process.cpuUsage();
    for (let at = 0; at < 10; at += 1) heard(text);
    expect(process.cpuUsage(before).user / 10 / 1000).toBeLessThan(40);
  });
});

describe('a confirmation', () => {
  const seen = { found: 'intents', intents: [{ do: 'acknowledge' }] };

  test.each([
    'got it, topper stops in time',
    'got it, i stop at 10',
    'enterado, paro a tiempo',
    'understood, stopping the topper now',
    '👍',
    '👍🏽',
  ])('%s', (text) => {
    for (const addressed of [true, false]) expect(heard(text, 'none', 'gus', addressed)).toEqual(seen);
  });

  test('with what may be an order of the grower is asked about', () => {
    expect(heard('got it, i stop at 10', 'none', 'ruth', true).found).toBe('likely');
  });

  test.each(['not got it yet', 'i have not seen it, topper is running'])('is not: %s', (text) => {
    expect(heard(text, 'none', 'gus')).not.toEqual(seen);
  });
});
