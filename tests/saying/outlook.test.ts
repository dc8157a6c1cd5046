import { describe, expect, test } from 'vitest';
import type { Roster } from '../../src/core/roster.ts';
import type { Telling } from '../../src/core/telling.ts';
import { zoneClock } from '../../src/run/host/zone-clock.ts';
import { say } from '../../src/saying/say.ts';
import { at } from '../support/given.ts';
import { COOL, FROSTY, WARM, outlookTelling } from '../support/outlooks.ts';
import { sampleRoster } from '../support/roster.ts';

const said = (telling: Telling, clock: string, language: 'en' | 'es' = 'en', roster: Roster = sampleRoster) =>
  say(telling, { language, roster, clock: zoneClock, nowMs: at(clock), zone: roster.zone });
const linesOf = (...given: Parameters<typeof said>): string[] => said(...given).text.split('\n');

describe('the outlook in words', () => {
  test('tells when to dig, the chance, the coolest start, the roots', () => {
    const rain = [{ fromMs: at('2026-10-21 02:00'), toMs: at('2026-10-21 08:00'), inches: 0.27 }];
    const telling = outlookTelling([COOL, WARM, WARM], 1, '18:00', { rain });
    expect(linesOf(telling, '18:00')).toEqual([
      'Tomorrow, North station: dig 5:00 AM to 11:10 AM, topper stops 10:40 AM. Dig again about 8:50 PM.',
      'High 70 °F at 4:00 PM: almost sure to pass 60 °F.',
      'Coolest start: 38 °F at 5:00 AM.',
      expect.stringMatching(
        /^Roots about 4\d °F to 5\d °F at 4:00 PM, topped rows about 5\d °F to 7\d °F \(estimate/,
      ),
      'Rain: 0.27 in that day, 0.27 in over three days.',
      "Forecast of 6:00 PM. The station's own word goes before it.",
    ]);
  });

  test('says no more than that nothing stops on a cool day', () => {
    const lines = linesOf(outlookTelling([COOL, COOL], 0, '05:00'), '05:00');
    expect(lines[0]).toBe('Today, North station: no heat stop likely.');
    expect(lines.join()).not.toMatch(/sugar|Rain|Frost|topped/);
  });

  test('holds the dig by frost until crowns are cut, and says so first', () => {
    expect(linesOf(outlookTelling([COOL, FROSTY, FROSTY], 1, '18:00'), '18:00').slice(0, 4)).toEqual([
      'Tomorrow, North station: FROST. No digging until crowns are cut and sound, from about 9:00 AM.',
      'High 54 °F at 4:00 PM: hardly a chance of passing 60 °F.',
      'Coldest: 22 °F at 5:00 AM.',
      'Frost: top nothing ahead this evening.',
    ]);
    expect(linesOf(outlookTelling([FROSTY, COOL], 0, '00:00'), '05:00')).toContain(
      'Frost: cut crowns before you dig.',
    );
  });

  test('has no window in the morning where it is too warm all day', () => {
    const hot = WARM.map((f) => f + 30);
    expect(linesOf(outlookTelling([hot, hot, COOL], 1, '18:00'), '18:00')[0]).toBe(
      'Tomorrow, North station: too warm to dig in the morning.',
    );
  });

  test('is in Spanish for who speaks it, and metric for a metric operation', () => {
    const metric: Roster = { ...sampleRoster, units: 'metric' };
    const rain = [{ fromMs: at('2026-10-21 02:00'), toMs: at('2026-10-21 08:00'), inches: 1 }];
    const lines = linesOf(outlookTelling([COOL, WARM, WARM], 1, '18:00', { rain }), '18:00', 'es', metric);
    expect(lines[0]).toBe(
      'Mañana, North station: saquen de 5:00 a.m. a 11:10 a.m.; la deshojadora para a las 10:40 a.m. Otra vez como a las 8:50 p.m.',
    );
    // 70 °F = 21.1 °C, 60 °F = 15.6 °C; 1 in = 25.4 mm.
    expect(lines[1]).toBe('Máxima 21.1 °C a las 4:00 p.m.: casi seguro que pasa de 15.6 °C.');
    expect(lines.join('\n')).toMatch(/Lluvia: 25 mm ese día/);
  });

  test('tells times by the clock at the station, where that is in another zone', () => {
    const [station] = sampleRoster.stations;
    if (!station) throw new Error('the sample has a station');
    const roster = { ...sampleRoster, stations: [{ ...station, zone: 'America/Los_Angeles' }] };
    const telling = outlookTelling([COOL, WARM, WARM], 1, '18:00', { roster });
    // The same instants, an hour earlier by the clock.
    expect(linesOf(telling, '18:00', 'en', roster)[1]).toMatch(/^High 70 °F at 3:00 PM/);
  });
});

describe('the picture of it', () => {
  test('says in words what is to be seen', () => {
    const picture = said(outlookTelling([COOL, WARM, WARM], 1, '18:00'), '18:00').picture;
    expect(picture?.altText).toBe(
      'Picture: Tomorrow 10/21, North station. Temperature 38 °F to 70 °F, limit 60 °F. To dig: 5:00 AM to 11:10 AM, from 8:50 PM.',
    );
    const spanish = said(outlookTelling([COOL, WARM, WARM], 1, '18:00'), '18:00', 'es').picture;
    expect(spanish?.altText).toMatch(
      /^Imagen: Mañana 21\/10, North station\. .*Para sacar: de 5:00 a\.m\. a/,
    );
  });

  test('draws curve, limit and time to dig to one scale', () => {
    const svg = said(outlookTelling([COOL, WARM, WARM], 1, '18:00'), '18:00').picture?.svg ?? '';
    const points =
      /<polyline points="([^"]*)"/
        .exec(svg)?.[1]
        ?.split(' ')
        .map((point) => point.split(',').map(Number)) ?? [];
    expect(points).toHaveLength(25);
    const limitY = Number(/y1="([\d.]+)"[^>]*stroke-dasharray/.exec(svg)?.[1]);
    const dig = /<rect x="([\d.]+)" width="([\d.]+)"/.exec(svg)?.slice(1).map(Number) ?? [];
    const stopX = (dig[0] ?? NaN) + (dig[1] ?? NaN);
    // 12:30 lies half way between 58 °F (12:00) and 62 °F (13:00), and so does the limit of 60 °F.
    const [before = [], after = []] = points.slice(12, 14);
    const perHour = (after[0] ?? NaN) - (before[0] ?? NaN);
    // The last load needs 80 min to the pile, so that the dig stops at 11:10.
    expect(stopX).toBeCloseTo((before[0] ?? NaN) + (0.5 - 80 / 60) * perHour, 0);
    expect(limitY).toBeCloseTo(((before[1] ?? NaN) + (after[1] ?? NaN)) / 2, 0);
    // Up is warmer.
    expect(Math.min(...points.map(([, y]) => y ?? NaN))).toBe(points[16]?.[1]);
  });

  test('keeps a name from breaking it', () => {
    const [station] = sampleRoster.stations;
    if (!station) throw new Error('the sample has a station');
    const roster = { ...sampleRoster, stations: [{ ...station, name: 'A & B <"north">' }] };
    const svg = said(outlookTelling([COOL, WARM, WARM], 1, '18:00', { roster }), '18:00', 'en', roster)
      .picture?.svg;
    expect(svg).toContain('A &amp; B &lt;&quot;north&quot;&gt;');
  });

  test('is not there where nothing is forecast', () => {
    expect(said(outlookTelling([], 1, '18:00'), '18:00').picture).toBeNull();
  });
});
