import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { openRanker } from '../../src/reading/ranker/rank.ts';
import { SHAPE } from '../../src/reading/ranker/shape.ts';
import { wordsFor } from '../../src/reading/ranker/words.ts';
import { corpusSha256, examples } from './training/corpus.ts';
import { measure } from './training/measure.ts';
import { MEASURING } from './training/writers.ts';

const bytes = readFileSync(new URL('../../src/reading/ranker/weights.bin', import.meta.url));
const ranker = openRanker(bytes, SHAPE.acts);

describe('the ranker', () => {
  test('was learned from the corpus as it is: after a change of the corpus run `npm run train`', () => {
    expect(SHAPE.corpusSha256).toBe(corpusSha256());
    expect(SHAPE.weightsSha256).toBe(createHash('sha256').update(bytes).digest('hex'));
  });

  test('refuses weights of another shape', () => {
    expect(() => openRanker(bytes.subarray(1), SHAPE.acts)).toThrow('train them again');
  });

  test('knows words by their letters, whatever their accents and capitals', () => {
    const words = wordsFor({ fields: ['North 40'], stations: ['Cedar'] });
    expect(words("YA VOY a Cedar, 77 940 at 10:15, truck 4, i'm at north 40")).toEqual([
      ...[
        'ya',
        'voy',
        'a',
        '#station',
        ',',
        '#57',
        'at',
        '#clock',
        ',',
        'truck',
        '#1',
        ',',
        'im',
        'at',
        '#field',
      ],
    ]);
  });

  // Floors only rise. Writers in `MEASURING` were never learned from.
  test.each([
    ['r', 0.74, 0.95],
    ['s', 0.63, 0.87],
    ['t', 0.67, 0.9],
    ['u', 0.68, 0.89],
    ['v', 0.78, 0.94],
  ])('has the acts of writer %s right in %d, among three in %d', (writer, right, amongThree) => {
    expect(MEASURING).toContain(writer);
    const some = examples().filter((example) => example.writer === writer);
    const measured = measure(some, ranker);
    expect(measured.right / measured.meaning).toBeGreaterThanOrEqual(right);
    expect(measured.amongThree / measured.meaning).toBeGreaterThanOrEqual(amongThree);
  });

  test('takes at most 15 ms for the longest message', () => {
    const words = wordsFor({ fields: [], stations: [] })(
      'a long message that never seems to come to an end '.repeat(8),
    );
    const message = { words, state: 'none', role: 'driver' };
    ranker(message);
    const startMs = performance.now();
    for (let at = 0; at < 20; at += 1) ranker(message);
    expect((performance.now() - startMs) / 20).toBeLessThan(15);
  });
});
