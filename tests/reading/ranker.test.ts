import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { learnedRankers } from '../../src/command/learned-ranker.ts';
import { openLinear } from '../../src/reading/ranker/linear.ts';
import { openNetwork } from '../../src/reading/ranker/network.ts';
import { NETWORK } from '../../src/reading/ranker/network-shape.ts';
import { SHAPE } from '../../src/reading/ranker/shape.ts';
import { wordsFor } from '../../src/reading/ranker/words.ts';
import { corpusSha256, examples } from './training/corpus.ts';
import { measure } from './training/measure.ts';
import { MEASURING } from './training/writers.ts';

const bytesOf = (file: string): Buffer =>
  readFileSync(new URL(`../../src/reading/ranker/${file}`, import.meta.url));
const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');
const [linear, network] = [bytesOf('linear.bin'), bytesOf('network.bin')];
const { rank } = learnedRankers();

describe('the learned readers', () => {
  test('belong to the corpus as it is: after a change run `npm run train` and `npm run train:network`', () => {
    expect(SHAPE.corpusSha256).toBe(corpusSha256());
    expect(SHAPE.weightsSha256).toBe(sha256(linear));
    expect(NETWORK.corpusSha256).toBe(corpusSha256());
    expect(NETWORK.weightsSha256).toBe(sha256(network));
  });

  test('have weights of 8 MB at most', () => {
    expect(linear.length + network.length).toBeLessThanOrEqual(8e6);
  });

  test('refuse weights of another shape', () => {
    expect(() => openLinear(linear.subarray(1), SHAPE.acts)).toThrow('train them again');
    expect(() => openNetwork(network.subarray(1), SHAPE.acts)).toThrow('train it again');
    expect(() => openNetwork(Buffer.concat([network, network]), SHAPE.acts)).toThrow('train it again');
  });

  test('the network finds here what PyTorch found with the same weights', () => {
    const open = openNetwork(network, SHAPE.acts);
    const probes = examples().filter(({ writer }) => !MEASURING.includes(writer));
    NETWORK.probes.forEach((chances, at) => {
      const message = probes[at]?.message;
      const found = message === undefined ? [] : open(message);
      SHAPE.acts.forEach((act, i) => {
        expect(found.find((one) => one.act === act)?.certainty).toBeCloseTo(chances[i] ?? -1, 4);
      });
    });
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
    const measured = measure(some, rank);
    expect(measured.right / measured.meaning).toBeGreaterThanOrEqual(right);
    expect(measured.amongThree / measured.meaning).toBeGreaterThanOrEqual(amongThree);
  });

  test('takes at most 15 ms for the longest message', () => {
    const words = wordsFor({ fields: [], stations: [] })(
      'a long message that never seems to come to an end '.repeat(8),
    );
    const message = { words, state: 'none', role: 'driver' };
    for (let at = 0; at < 10; at += 1) rank(message);
    // Of the processor, so that other tests beside this one are not counted.
    const before = process.cpuUsage();
    for (let at = 0; at < 20; at += 1) rank(message);
    const { user, system } = process.cpuUsage(before);
    expect((user + system) / 1000 / 20).toBeLessThan(15);
  });
});
