import { describe, expect, it } from 'vitest';
import { kindOf } from '../../src/saying/tellings/index.ts';
import { tellings } from '../support/tellings.ts';

const all = Object.values(tellings).flat();
const kindsThat = (holds: (kind: ReturnType<typeof kindOf>) => boolean): string[] =>
  [...new Set(all.filter((telling) => holds(kindOf(telling))).map(({ tell }) => tell))].toSorted();

describe('what the bot says', () => {
  it('is worthless after an hour where it is about the present, after six where it is about tomorrow', () => {
    expect(kindsThat(({ holdsMin }) => holdsMin === 60)).toEqual([
      'board',
      'fleet',
      'line-limit',
      'line-stopped',
      'may-dig',
      'reminder',
      'station-news',
      'truck',
      'wait',
      'where-to',
    ]);
    expect(kindsThat(({ holdsMin }) => holdsMin === 360)).toEqual(['outlook']);
    // The answer to a question is worth nothing when the question is over.
    expect(kindsThat(({ holdsMin }) => holdsMin === 30)).toEqual(['offer']);
    expect(kindsThat(({ holdsMin }) => holdsMin !== null)).toHaveLength(12);
  });

  it('rings for what cannot wait, and for nothing else', () => {
    expect(kindsThat(({ rings }) => rings)).toEqual([
      'danger-unclear',
      'decide',
      'emergency',
      'emergency-answer',
      'notice',
      'offer',
      'passed-words',
      'reminder',
      'station-news',
      'undelivered',
    ]);
    expect(tellings.notice.map((notice) => kindOf(notice).rings)).toEqual(
      tellings.notice.map(({ rings }) => rings),
    );
  });

  it('names the source of the weather for plans, and for notices that the forecast raised', () => {
    expect(kindsThat(({ restsOnForecast }) => restsOnForecast)).toEqual(['notice', 'outlook']);
    expect(tellings.notice.map((notice) => kindOf(notice).restsOnForecast)).toEqual(
      tellings.notice.map(({ step }) => step.source === 'forecast'),
    );
  });
});
