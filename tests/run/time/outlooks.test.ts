import { describe, expect, test } from 'vitest';
import { hearForecast } from '../../../src/run/in/hear-forecast.ts';
import { tick } from '../../../src/run/time/tick.ts';
import { at, crewForEachTest, crewOn } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';
import { COOL, WARM } from '../../support/outlooks.ts';
import { sampleRoster } from '../../support/roster.ts';

const NORTH = 'north-station';

let crew: Crew;
let crewFor: (outlookTo: 'managers' | 'crew' | 'nobody') => Promise<Crew>;
crewForEachTest((_, database) => {
  crewFor = (outlookTo) =>
    crewOn(database, { roster: { ...sampleRoster, operation: `outlook-${crypto.randomUUID()}`, outlookTo } });
});

const outlooks = () => crew.delivered.filter(({ kind }) => kind === 'outlook');
const tellsTomorrow = /^Tomorrow, North station: dig 5:00 AM to 11:10 AM, topper stops 10:40 AM\./;

describe('the outlook of the evening', () => {
  test('comes at six, once, to grower and foreman in their languages, with a picture', async () => {
    crew = await crewFor('managers');
    await crew.forecast(NORTH, '16:50', '00:00', [...COOL, ...WARM, ...WARM]);
    expect(await crew.passTo('17:59')).toEqual([]);
    expect(await crew.passTo('18:00')).toHaveLength(2);
    expect(crew.heardBy('ruth')).toEqual([expect.stringMatching(tellsTomorrow)]);
    expect(crew.heardBy('mateo')).toEqual([
      expect.stringMatching(/^Mañana, North station: saquen de 5:00 a\.m\. a 11:10 a\.m\.; la deshojadora/),
    ]);
    for (const { said, urgent } of outlooks()) {
      expect(said.picture?.svg).toMatch(/^<svg /);
      expect([said.ring, urgent]).toEqual([false, false]);
    }
    expect(await crew.passTo('23:59')).toEqual([]);
  });

  test('promises nothing of an afternoon that the forecast does not reach', async () => {
    crew = await crewFor('managers');
    await crew.forecast(NORTH, '16:50', '00:00', COOL);
    await crew.passTo('18:00');
    expect(crew.heardBy('ruth')).toEqual([
      'No plan for North station: the forecast of 4:50 PM does not reach to the end of that day.',
    ]);
  });

  test('goes to the rooms too where the crew is to have it, in both languages', async () => {
    crew = await crewFor('crew');
    await crew.forecast(NORTH, '16:50', '00:00', [...COOL, ...WARM, ...WARM]);
    await crew.passTo('18:00');
    expect(crew.heardIn('crew')).toEqual([expect.stringMatching(/Tomorrow, North[^]*Mañana, North/)]);
    expect(crew.heardBy('ana')).toEqual([]);
  });

  test('does not come where nobody wants it, nor without a forecast', async () => {
    crew = await crewFor('nobody');
    await crew.forecast(NORTH, '16:50', '00:00', [...COOL, ...COOL]);
    expect(await crew.passTo('23:59')).toEqual([]);
    crew = await crewFor('managers');
    expect(await crew.passTo('23:59')).toEqual([]);
  });

  test('says so where the forecast is old', async () => {
    crew = await crewFor('managers');
    const hours = [...COOL, ...WARM].map((temperatureF, hour) => ({
      startMs: at('00:00') + hour * 3_600_000,
      temperatureF,
    }));
    const issuedMs = at('00:00') - 2 * 3_600_000;
    const silent = { place: NORTH, issuedMs, hours, rain: [], freezeAlerts: null, heardMs: at('04:00') };
    await hearForecast(crew.bot, silent);
    await crew.passTo('05:00');
    await crew.passTo('18:00');
    expect(crew.heardBy('ruth')).toEqual([
      expect.stringMatching(/^Today, North station: no heat stop likely\./),
      expect.stringMatching(
        /^No plan for North station: the newest forecast is of 10:00 PM on 10\/19, too old/,
      ),
    ]);
  });

  test('is dropped where it comes too late to say "tomorrow"', async () => {
    crew = await crewFor('managers');
    await crew.forecast(NORTH, '11:50', '00:00', [...COOL, ...WARM, ...WARM]);
    await tick(crew.bot, at('18:00'));
    const sixHoursLater = (): number => at('18:00') + 6 * 3_600_000 + 1;
    const { outbox } = crew.operation.store;
    expect(await outbox.claim(['local'], sixHoursLater(), 1_000, 10)).toEqual([]);
  });
});

describe('asked', () => {
  test('it is told at once, of today in the morning and of tomorrow from noon on', async () => {
    crew = await crewFor('nobody');
    await crew.forecast(NORTH, '06:50', '00:00', [...COOL, ...WARM, ...WARM]);
    expect(await crew.say('ben', null, 'outlook', '07:00')).toEqual([
      expect.stringMatching(/^Today, .*no heat stop/),
    ]);
    expect(await crew.say('ben', null, 'outlook', '13:00')).toEqual([expect.stringMatching(tellsTomorrow)]);
    expect(await crew.say('ben', null, 'tomorrow?', '07:05')).toEqual([expect.stringMatching(tellsTomorrow)]);
    expect(await crew.say('ana', null, '¿y mañana?', '07:10')).toEqual([
      expect.stringMatching(/^Mañana, North/),
    ]);
    expect(await crew.say('ben', null, 'plan for today', '13:05')).toEqual([
      expect.stringMatching(/^Today, /),
    ]);
  });

  test('without a forecast it says that there is none', async () => {
    crew = await crewFor('nobody');
    expect(await crew.say('ben', null, 'tomorrow?', '07:00')).toEqual([
      'No plan for North station: I have no forecast for it.',
    ]);
    await crew.forecast(NORTH, '00:10', '00:00', [...COOL, ...WARM], '00:20');
    expect(await crew.say('ben', null, 'tomorrow?', '18:30')).toEqual([
      expect.stringMatching(/^No plan for North station: the newest forecast is of 12:10 AM, too old/),
    ]);
  });
});

test('a forecast heard at six does not push the outlook that is due', async () => {
  crew = await crewFor('managers');
  await crew.forecast(NORTH, '16:50', '00:00', [...COOL, ...WARM, ...WARM]);
  await crew.forecast(NORTH, '17:50', '00:00', [...COOL, ...WARM, ...WARM], '18:00');
  await crew.passTo('18:01');
  expect(outlooks()).toHaveLength(2);
});

test('what is told by a forecast names its source where that asks for it', async () => {
  crew = await crewFor('managers');
  crew.bot.weatherBy = 'Weather data by Open-Meteo.com (CC BY 4.0)';
  await crew.forecast(NORTH, '04:50', '00:00', [...WARM, ...WARM, ...WARM]);
  await crew.passTo('05:00');
  const named = crew.delivered.filter(({ said }) =>
    said.text.endsWith('\nWeather data by Open-Meteo.com (CC BY 4.0)'),
  );
  expect(new Set(named.map(({ kind }) => kind))).toEqual(new Set(['notice', 'outlook']));
  expect(named).toHaveLength(crew.delivered.length);
});
