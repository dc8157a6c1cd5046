import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openDatabase } from '../../../src/store/database.ts';
import { at, crewForEachTest, crewOn } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';
import { sampleRoster } from '../../support/roster.ts';
import type { FreezeAlert } from '../../../src/core/weather/types.ts';

let crew: Crew;
crewForEachTest((fresh) => {
  crew = fresh;
});

const NORTH = 'north-station';
const DAWN = '04:00';
/**
 * Hourly from 04:00. Passes the station's 60 °F between 12:00 (58) and 13:00 (62), so at 12:30; high 70 at 16:00. The last
 * load needs 80 min from the digger to the pile where nothing is learned, so the dig stops at 11:10.
 */
const WARM = [36, 36, 37, 39, 43, 47, 51, 55, 58, 62, 66, 68, 70, 66, 61, 55, 50, 47, 45, 43];
/** The same, two hours earlier: at 10:30. */
const SOONER = [...WARM.slice(2), 41, 40];
const COOL = WARM.map((temperatureF) => Math.min(temperatureF, 52));

const noticesOf = (told: Crew) => told.delivered.filter((message) => message.kind === 'notice');
const roomNotices = (told: Crew): string[] =>
  noticesOf(told)
    .filter((message) => 'room' in message.recipient)
    .map((message) => message.said.text.split('\n')[0] ?? '');
/** Of an order: the room, the grower and those who must act: foreman, digger and topper operator. */
const HEARERS = 5;

describe('a warm forecast', () => {
  test('raises the stop in the room and to whom it concerns, once, phones ringing for those who must act', async () => {
    await crew.forecast(NORTH, '10:05', DAWN, WARM);
    expect(roomNotices(crew)).toEqual([
      'HEAT STOP for North station: stop topping at 10:40 AM, stop digging at 11:10 AM.',
    ]);
    const notices = noticesOf(crew);
    expect(new Set(notices.map((message) => JSON.stringify(message.recipient))).size).toBe(HEARERS);
    expect(notices).toHaveLength(HEARERS);
    expect(notices.every((message) => message.urgent)).toBe(true);
    expect(notices.filter(({ said }) => said.ring).map(({ recipient }) => recipient)).toEqual([
      { person: 'mateo' },
      { person: 'fritz' },
      { person: 'gus' },
    ]);
    expect(crew.heardBy('mateo')).toEqual([
      expect.stringMatching(/^PARO POR CALOR para North station: paren de deshojar .*\n.*70 °F/),
    ]);
  });

  test('heard twice, or again with the same times, says nothing more', async () => {
    await crew.forecast(NORTH, '05:10', DAWN, WARM);
    expect(await crew.forecast(NORTH, '05:10', DAWN, WARM, '05:15')).toEqual([]);
    expect(await crew.forecast(NORTH, '05:18', DAWN, WARM)).toEqual([]);
    expect((await crew.factsSoFar()).map(({ fact }) => fact.kind)).toEqual([
      'forecast-issued',
      'notice-raised',
      'forecast-issued',
    ]);
  });

  test('heard again with another freeze alert is written down anew, and with the same one it is not', async () => {
    const alert = { id: 'a1', event: 'Freeze Warning', onsetMs: at('22:00'), endsMs: null };
    const issue = (clock: string, freezeAlerts: readonly FreezeAlert[] | null) =>
      crew.forecast(NORTH, '05:10', DAWN, COOL, clock, { freezeAlerts });
    await issue('05:12', []);
    await issue('05:20', [alert]);
    await issue('05:40', [{ ...alert }]);
    await issue('06:00', null);
    const facts = (await crew.factsSoFar()).map(({ fact }) => fact);
    expect(facts.filter(({ kind }) => kind === 'forecast-issued').map(({ id }) => id)).toEqual([
      expect.stringMatching(/#0$/),
      expect.stringMatching(/#1$/),
    ]);
  });

  test('that moves the stop by more than half an hour is told to all, with the time it was', async () => {
    await crew.forecast(NORTH, '05:10', DAWN, WARM);
    await crew.forecast(NORTH, '06:50', DAWN, SOONER);
    expect(roomNotices(crew)).toEqual([
      expect.stringMatching(/^HEAT STOP for North station: /),
      expect.stringMatching(/^HEAT STOP for North station, NEW TIME: /),
    ]);
    expect(crew.heardBy('ruth').join()).toContain('It was 11:10 AM.');
    // Hours ahead: to the room, to grower and foreman.
    expect(noticesOf(crew)).toHaveLength(2 * 3);
  });

  test('that has gone cool again calls the stop off', async () => {
    await crew.forecast(NORTH, '05:10', DAWN, WARM);
    await crew.forecast(NORTH, '07:50', DAWN, COOL);
    expect(roomNotices(crew)).toHaveLength(1);
    await crew.forecast(NORTH, '07:50', DAWN, COOL, '08:20');
    expect(roomNotices(crew)).toHaveLength(1);
    await crew.forecast(NORTH, '08:50', DAWN, COOL);
    expect(roomNotices(crew)[1]).toBe(
      'ALL-CLEAR for North station: the heat stop planned for 11:10 AM is off.',
    );
  });

  test('for a place that is no station of ours is refused', async () => {
    expect(await crew.forecast('far-station', '05:10', DAWN, WARM)).toEqual(['unknown-place']);
    expect(await crew.factsSoFar()).toEqual([]);
  });
});

describe('time passing', () => {
  test('brings the all-clear when it is cool, once, with nothing heard meanwhile', async () => {
    await crew.forecast(NORTH, '05:10', DAWN, WARM);
    await crew.passTo('18:00');
    // Advice, and the order an hour before the topper must stop.
    expect(roomNotices(crew)).toHaveLength(2);
    await crew.passTo('23:00');
    expect(roomNotices(crew)[2]).toBe(
      "ALL-CLEAR for North station: heat stop over, dig again now. The station's own word goes before mine.",
    );
    const [allClear] = noticesOf(crew).slice(-1);
    // Below 58 °F from 18:30 on, an hour of that at 19:30, and the roots follow within two hours.
    expect(new Date(allClear?.notBeforeMs ?? 0).toISOString()).toBe('2026-10-21T02:30:00.000Z');
    expect(await crew.passTo('23:30')).toEqual([]);
    expect(noticesOf(crew)).toHaveLength(3 + 2 * HEARERS);
  });

  test('without a forecast says nothing', async () => {
    expect(await crew.passTo('23:00')).toEqual([]);
  });
});

describe('words of the crew', () => {
  test('roots measured above the limit stop the dig at once', async () => {
    await crew.forecast(NORTH, '05:10', DAWN, COOL);
    const said = await crew.say('mateo', 'crew', 'raíz a 57 en el north 40', '14:00');
    expect(said).toHaveLength(HEARERS + 1);
    expect(roomNotices(crew)).toEqual(['HEAT STOP for North station: stop topping NOW, stop digging NOW.']);
  });

  test('the station’s word that it takes beets ends a stop that has begun', async () => {
    await crew.forecast(NORTH, '05:10', DAWN, WARM);
    await crew.passTo('12:00');
    await crew.say('ben', 'crew', 'north station is open', '15:30');
    expect(roomNotices(crew)).toHaveLength(2);
    await crew.say('mateo', 'crew', 'north station is open', '16:00');
    expect(roomNotices(crew)[2]).toMatch(/^ALL-CLEAR for North station: heat stop over, dig again now/);
  });

  test('the forecast does not end what a person has ordered', async () => {
    await crew.forecast(NORTH, '05:10', DAWN, WARM);
    await crew.say('mateo', null, 'stop digging now, too hot', '09:00');
    await crew.passTo('23:00');
    expect(roomNotices(crew)).toHaveLength(2);
    await crew.say('ruth', null, 'dig again', '23:10');
    expect(roomNotices(crew)[2]).toMatch(/^ALL-CLEAR/);
  });
});

// A new PGlite takes seconds, on a busy machine many.
test('after a restart the alarms go off still, and nothing is said twice', { timeout: 240_000 }, async () => {
  const directory = mkdtempSync(join(tmpdir(), 'fieldbell-weather-'));
  const before = await openDatabase({ embedded: directory });
  const first = await crewOn(before, { roster: sampleRoster });
  await first.forecast(NORTH, '05:10', DAWN, WARM);
  await before.close();
  await expect(first.say('ana', 'crew', 'cargado', '07:00', { id: 'm' })).rejects.toThrow(
    /Book of "sample"|closed/,
  );

  const after = await openDatabase({ embedded: directory });
  const second = await crewOn(after, { roster: sampleRoster });
  await second.forecast(NORTH, '05:10', DAWN, WARM, '07:05');
  expect(noticesOf(second)).toEqual([]);
  // What the closed database did not take is delivered again by the platform.
  expect(await second.say('ana', 'crew', 'cargado', '07:10', { id: 'm', sent: '07:00' })).toHaveLength(1);
  await second.passTo('23:00');
  expect(roomNotices(second)).toEqual([
    expect.stringMatching(/^HEAT STOP for North station: stop topping at 10:40 AM/),
    expect.stringMatching(/^ALL-CLEAR for North station: heat stop over, dig again now/),
  ]);
  expect(noticesOf(second)).toHaveLength(2 * HEARERS);
  await after.close();
});
