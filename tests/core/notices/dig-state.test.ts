import { describe, expect, it } from 'vitest';
import type { Fact, NoticeStep } from '../../../src/core/book/facts.ts';
import { digState } from '../../../src/core/notices/notices.ts';
import { at, fact, given } from '../../support/given.ts';
import { raised } from '../../support/notices.ts';
import { sampleRoster } from '../../support/roster.ts';

const [north] = sampleRoster.stations;
if (!north) throw new Error('the sample has a station');
const roster = { ...sampleRoster, stations: [north, { ...north, id: 'west', name: 'West station' }] };
/** May the crew dig, asked on that day at `clock`. */
const dig = (facts: readonly Fact[], clock: string) =>
  digState(given(facts, roster).harvest, at('00:00'), at(clock));

describe('a station that is closed', () => {
  const word = (clock: string, open: boolean, until: string | null = null, station = 'north-station'): Fact =>
    fact({ kind: 'station-reported', station, open, untilMs: until === null ? null : at(until) }, clock);
  const closed = (facts: readonly Fact[], clock = '12:00'): string[] =>
    dig(facts, clock).closed.map(({ station }) => station);

  it('is named until it says that it is open', () => {
    expect(closed([])).toEqual([]);
    expect(closed([word('10:00', false)])).toEqual(['north-station']);
    expect(closed([word('10:00', false), word('11:00', true)])).toEqual([]);
    expect(closed([word('10:00', true), word('11:00', false)])).toEqual(['north-station']);
  });

  it('is named until the hour at which it opens again', () => {
    const untilNoon = [word('10:00', false, '12:00')];
    expect(closed(untilNoon, '11:59')).toEqual(['north-station']);
    expect(closed(untilNoon, '12:00')).toEqual([]);
  });

  it('is each one by its own word', () => {
    const north = word('10:00', false);
    expect(closed([north, word('11:00', true, null, 'west')])).toEqual(['north-station']);
    expect(closed([north, word('11:00', false, null, 'west')])).toEqual(['north-station', 'west']);
  });

  it('is not named by the word of the day before', () => {
    expect(closed([word('2026-10-19 23:59', false)])).toEqual([]);
    expect(closed([word('00:00', false)])).toEqual(['north-station']);
  });
});

describe('a stop that foreman or grower has ended, and said why', () => {
  const ended = (clock: string, more: Partial<NoticeStep> = {}): Fact =>
    raised(clock, { number: 2, stage: 'all-clear', source: 'person', words: 'crowns are fine', ...more });
  const overridden = (...facts: readonly Fact[]) => dig([raised('00:00'), ...facts], '18:00').overridden;

  it('is named with the reason', () => {
    expect(overridden(ended('15:00'))).toMatchObject({
      step: { words: 'crowns are fine' },
      atMs: at('15:00'),
    });
  });

  it('is not named where no reason was given, or the forecast ended it', () => {
    expect(overridden(ended('15:00', { words: null }))).toBeNull();
    expect(overridden(ended('15:00', { source: 'forecast' }))).toBeNull();
  });

  it('is not named before it is ended, whatever was said with the order', () => {
    expect(overridden()).toBeNull();
    expect(overridden(ended('15:00', { stage: 'update' }))).toBeNull();
  });

  it('is named on that day alone', () => {
    const facts = [raised('2026-10-19 09:00'), ended('2026-10-19 23:59')];
    expect(dig(facts, '08:00').overridden).toBeNull();
    expect(dig([raised('2026-10-19 09:00'), ended('00:00')], '08:00').overridden).not.toBeNull();
  });

  it('is the newest of them', () => {
    const mud = { event: 'mud', notice: 'mud', words: 'wind dries it' } as const;
    const told = overridden(ended('15:00'), raised('15:30', { ...mud, words: null }), ended('16:00', mud));
    expect(told?.step).toMatchObject({ notice: 'mud', words: 'wind dries it' });
  });
});

describe('rain', () => {
  const hours = [{ startMs: at('00:00'), temperatureF: 50 }];
  const rain = [{ fromMs: at('10:00'), toMs: at('11:00'), inches: 0.4 }];
  const forecast = fact(
    { kind: 'forecast-issued', place: 'north-station', issuedMs: at('00:00'), hours, rain, freezeAlerts: [] },
    '00:00',
  );
  const mud = { event: 'mud', notice: 'mud', stopAtMs: at('09:00') } as const;

  it('is told of while mud stops the dig', () => {
    expect(dig([forecast, raised('09:00', mud)], '12:00').rain).toEqual({ beforeIn: 0.4, nextIn: 0 });
  });

  it('is not told of without a stop, before it begins, or in a heat stop', () => {
    expect(dig([forecast], '12:00').rain).toBeNull();
    expect(dig([forecast, raised('09:00', { ...mud, stopAtMs: at('13:00') })], '12:00').rain).toBeNull();
    expect(dig([forecast, raised('09:00')], '14:00').rain).toBeNull();
  });
});
