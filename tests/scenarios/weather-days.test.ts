/** Whole days of weather: what is heard, and what the crew is told, when and how loudly. Times are those of the farm. */
import { beforeAll, afterAll, describe, expect, test } from 'vitest';
import type { Roster } from '../../src/core/roster.ts';
import { freshDatabase } from '../support/database.ts';
import type { Database } from '../../src/store/database.ts';
import { crewOn } from '../support/crew.ts';
import type { Crew } from '../support/crew.ts';
import { sampleRoster } from '../support/roster.ts';
import { ofStops, transcript } from '../support/conversation.ts';

let database: Database;
beforeAll(async () => {
  database = await freshDatabase();
});
afterAll(() => database.close());

const NORTH = 'north-station';
const rosterOf = (change: Partial<Roster> = {}): Roster => ({
  ...sampleRoster,
  ...change,
  operation: `day-${crypto.randomUUID()}`,
});
const newDay = (roster = rosterOf()): Promise<Crew> => crewOn(database, { roster });
const told = (crew: Crew): string[] => transcript(crew.bot.roster, ofStops(crew.delivered));
const everybodyConfirms = async (crew: Crew, clock: string) => {
  for (const { id } of crew.bot.roster.people) await crew.say(id, null, 'got it', clock);
};

/** Hourly from 04:00: passes the station's 60 °F at 12:30, 70 at 16:00, 61 at 18:00. */
const WARM = [36, 36, 37, 39, 43, 47, 51, 55, 58, 62, 66, 68, 70, 66, 61, 55, 50, 47, 45, 43];

const COOL = WARM.map((temperatureF) => Math.min(temperatureF, 52));

test('a hot day: the last load is on the pile before the limit is passed, and the dig goes on at night', async () => {
  const crew = await newDay();
  // Three loads of the day before: 40 min to the station, 30 in the line, 10 on the piler.
  for (const [hour, truck] of [
    ['08', '1'],
    ['09', '2'],
    ['10', '3'],
  ] as const) {
    const at = (minute: string) => `2026-10-19 ${hour}:${minute}`;
    const say = (words: string, clock: string) => crew.say('ruth', 'crew', `truck ${truck} ${words}`, clock);
    await say('loaded', at('00'));
    await say('in line', at('40'));
    await say('weighed in', `2026-10-19 ${String(Number(hour) + 1).padStart(2, '0')}:10`);
    await say('dumped', `2026-10-19 ${String(Number(hour) + 1).padStart(2, '0')}:20`);
  }
  await crew.forecast(NORTH, '04:30', '04:00', WARM);
  await crew.passTo('05:00');
  await everybodyConfirms(crew, '05:05');
  await crew.passTo('12:00');
  await crew.say('ben', null, 'can we dig', '12:00');
  await crew.forecast(NORTH, '18:00', '18:00', [61, 55, 50, 47, 45, 43, 41, 40]);
  await crew.passTo('23:59');
  // 12:30 less 40 + 30 + 10 min, 15 to spare and 10 to fill the truck: 10:45.
  expect(told(crew)).toEqual([
    '05:00 room: HEAT STOP for North station: stop topping at 10:15 AM, stop digging at 10:45 AM.',
    '09:15 room: HEAT STOP for North station: stop topping at 10:15 AM, stop digging at 10:45 AM.',
    "20:30 room: ALL-CLEAR for North station: heat stop over, dig again now. The station's own word goes before mine.",
  ]);
  expect(
    crew
      .heardBy('mateo')
      .filter((text) => text.startsWith('PARO POR CALOR'))
      .slice(1),
  ).toEqual([
    [
      'PARO POR CALOR para North station: paren de deshojar a las 10:15 a.m., paren de sacar a las 10:45 a.m.',
      'Por qué: pronóstico de 70 °F a las 4:00 p.m., límite 60 °F. El betabel caliente se echa a perder en el montón.',
      'Pronóstico de las 4:30 a.m.',
      'Trocas cargadas: sigan a la estación y pesen. Si la estación no los recibe, estaciónense en lugar seguro y avisen al mayordomo.',
      'Quizá se saca otra vez a las 8:30 p.m. Esperen el aviso.',
      'Lean y contesten solo estacionados: "ENTERADO".',
      'Enterados 9 de 9: Ruth, Mateo, Ana, Ben, Carla, Dale, Eli, Fritz, Gus.',
    ].join('\n'),
  ]);
});

/** Hourly from 04:00, with that high at 16:00. */
const withHigh = (highF: number): number[] =>
  [-24, -24, -23, -21, -17, -13, -9, -6, -4, -2.5, -1.2, -0.4, 0, -1, -5, -9, -13].map((f) => highF + f);

test('a borderline day: the forecast wobbles about the limit, and the crew hears of one stop', async () => {
  const crew = await newDay();
  await crew.forecast(NORTH, '05:00', '04:00', withHigh(60.4));
  for (const [hour, highF] of [59.7, 60.3, 59.8, 60.4, 59.9, 60.5, 60.2, 60.6, 60.1].entries()) {
    const clock = `${String(6 + hour).padStart(2, '0')}:00`;
    await crew.forecast(NORTH, clock, '04:00', withHigh(highF));
    await crew.passTo(clock);
  }
  const stages = told(crew);
  expect(stages.filter((text) => text.includes('HEAT STOP LIKELY'))).toHaveLength(1);
  expect(stages.filter((text) => /HEAT STOP(, NEW TIME)?: stop/.test(text)).length).toBeLessThanOrEqual(1);
  expect(stages.filter((text) => text.includes('ALL-CLEAR'))).toEqual([]);
  expect(stages[0]).toMatch(/^05:00 room: HEAT STOP LIKELY for North station: digging may stop at /);
});

test('a forecast revised twice: a new time by minutes is not told, one by two hours is, once', async () => {
  const crew = await newDay();
  await crew.forecast(NORTH, '05:00', '04:00', WARM);
  await everybodyConfirms(crew, '05:05');
  const slightlySooner = [...WARM.slice(0, 9), 63, ...WARM.slice(10)];
  await crew.forecast(NORTH, '06:00', '04:00', slightlySooner);
  await crew.forecast(NORTH, '07:00', '04:00', [...WARM.slice(2), 41, 40]);
  await everybodyConfirms(crew, '07:05');
  await crew.passTo('08:00');
  expect(told(crew)).toEqual([
    '05:00 room: HEAT STOP for North station: stop topping at 10:40 AM, stop digging at 11:10 AM.',
    '07:00 room: HEAT STOP for North station, NEW TIME: stop topping at 8:40 AM, stop digging at 9:10 AM.',
    '07:40 room: HEAT STOP for North station, NEW TIME: stop topping at 8:40 AM, stop digging at 9:10 AM.',
  ]);
  expect(crew.heardBy('ruth').join()).toContain('It was 11:10 AM.');
});

test('the forecast service is down: yesterday’s forecast stops the dig, and only people start it again', async () => {
  const crew = await newDay();
  await crew.forecast(NORTH, '2026-10-19 12:00', '2026-10-20 04:00', [...WARM, 41, 40, 39, 38]);
  await crew.passTo('2026-10-21 08:00');
  expect(told(crew).filter((text) => text.includes('room'))).toEqual([
    '05:00 room: HEAT STOP for North station: stop topping at 10:40 AM, stop digging at 11:10 AM.',
    '09:40 room: HEAT STOP for North station: stop topping at 10:40 AM, stop digging at 11:10 AM.',
  ]);
  expect((await crew.say('ben', null, 'can we dig', '2026-10-21 08:00'))[0]).toMatch(/^No\. HEAT STOP/);
  await crew.say('ben', 'crew', 'north station is open', '2026-10-21 08:05');
  await crew.say('ruth', 'crew', 'north station is open', '2026-10-21 08:10');
  expect(told(crew).at(-1)).toMatch(
    /^08:10 room: ALL-CLEAR for North station: heat stop over, dig again now/,
  );
});

test('a frost night: told by the evening, held until a crown was cut', async () => {
  const crew = await newDay();
  const morning = (clock: string) => `2026-10-21 ${clock}`;
  /** Hourly from noon: 28 °F at 01:00. */
  const chilly = [52, 53, 53, 52, 50, 46, 42, 38, 36, 34, 32, 30, 29, 28, 27, 27, 27, 27, 28, 31, 35, 40];
  await crew.forecast(NORTH, '06:00', '12:00', chilly);
  await crew.passTo('15:59');
  expect(told(crew)).toEqual([]);
  await crew.passTo('16:00');
  await crew.forecast(NORTH, '20:00', '20:00', [36, 34, 31, 29, 27, 25, 24, 23, 22, 22, 23, 27, 33, 38, 43]);
  await everybodyConfirms(crew, '20:05');
  await crew.passTo(morning('07:59'));
  await crew.say('ben', 'crew', 'crowns ok at north 40', morning('08:00'));
  expect((await crew.say('ana', null, '¿se puede sacar?', morning('08:05')))[0]).toMatch(
    /^No\. PARO POR HELADA/,
  );
  await crew.say('ruth', 'crew', 'crowns frozen at north 40', morning('08:30'));
  await crew.say('ruth', 'crew', 'crowns ok at north 40', morning('10:30'));
  expect(told(crew)).toEqual([
    '16:00 room: FROST LIKELY for North station: do not top ahead of the digger. Dig all that is topped before 12:30 AM on 10/21.',
    '20:00 room: FROST HOLD for North station: stop topping at 11:00 PM, stop digging at 2:00 AM on 10/21.',
    '22:00 room: FROST HOLD for North station: stop topping at 11:00 PM, stop digging at 2:00 AM on 10/21.',
    "10:30 room: ALL-CLEAR for North station: frost hold over, dig again now. The station's own word goes before mine.",
  ]);
  expect(crew.heardBy('gus').at(-2)).toBe(
    [
      'FROST HOLD for North station: stop topping at 11:00 PM, stop digging at 2:00 AM on 10/21.',
      'Why: forecast low 22 °F at 4:00 AM on 10/21. Beets that froze and thawed rot in the pile.',
      'Forecast of 8:00 PM.',
      'Loaded trucks: haul on to the station and weigh in. If the station turns you away, park where it is safe and tell the foreman.',
      'Dig again only when foreman or grower has cut crowns and says "crowns ok at North 40".',
      'Read and reply only when parked: "got it".',
      'Seen by 9 of 9: Ruth, Mateo, Ana, Ben, Carla, Dale, Eli, Fritz, Gus.',
    ].join('\n'),
  );
});

describe('the end of daylight saving time on 2026-11-01, a day of 25 hours', () => {
  test('an hour that comes twice is told with its zone, and the reminder waits for five o’clock', async () => {
    const crew = await newDay();
    // Hourly from 22:00 MDT: 24 °F at 01:00 MDT, an hour before the clock goes back.
    const cold = [31, 29, 26, 24, 23, 22, 22, 23, 24, 26, 30, 35, 40];
    await crew.forecast(NORTH, '2026-10-31 22:30', '2026-10-31 22:00', cold);
    await crew.passTo('2026-11-01 04:59');
    expect(told(crew)).toEqual([
      '22:30 room: FROST HOLD for North station: stop topping at 10:50 PM, stop digging at 1:00 AM MDT on 11/1.',
    ]);
    await crew.passTo('2026-11-01 05:00');
    const reminders = crew.delivered.filter(({ kind }) => kind === 'reminder');
    // 05:00 by the new time, which is 12:00 UTC.
    expect(new Set(reminders.map(({ notBeforeMs }) => new Date(notBeforeMs).toISOString()))).toEqual(
      new Set(['2026-11-01T12:00:00.000Z']),
    );
  });

  test('the afternoon is that of the new time', async () => {
    const crew = await newDay();
    await crew.forecast(NORTH, '2026-11-01 00:30', '2026-11-01 04:00', WARM);
    await crew.passTo('2026-11-01 18:00');
    await crew.forecast(NORTH, '2026-11-01 18:00', '2026-11-01 18:00', WARM.slice(14));
    await crew.passTo('2026-11-01 23:59');
    const notices = ofStops(crew.delivered).filter(({ kind }) => kind === 'notice');
    expect(told(crew).filter((text) => text.includes('room'))).toEqual([
      '05:00 room: HEAT STOP for North station: stop topping at 10:40 AM, stop digging at 11:10 AM.',
      '09:40 room: HEAT STOP for North station: stop topping at 10:40 AM, stop digging at 11:10 AM.',
      "20:30 room: ALL-CLEAR for North station: heat stop over, dig again now. The station's own word goes before mine.",
    ]);
    // 11:10 is six hours and ten minutes after 05:00, in both 18:10 and 12:00 UTC.
    expect(notices[0]?.data).toMatchObject({ stopAt: '2026-11-01T18:10:00.000Z' });
  });
});

test('two zones in one operation: every time says whose, and each station has its own stop', async () => {
  const [north] = sampleRoster.stations;
  if (!north) throw new Error('the sample has a station');
  const east = { ...north, id: 'east-station', name: 'East station', zone: 'America/Chicago' };
  const [field] = sampleRoster.fields;
  if (!field) throw new Error('the sample has a field');
  const crew = await newDay(
    rosterOf({
      stations: [north, east],
      fields: [
        ...sampleRoster.fields,
        { ...field, id: 'east-60', name: 'East 60', aliases: [], zone: east.zone, station: east.id },
      ],
    }),
  );
  await crew.forecast('east-station', '05:00', '04:00', WARM);
  await crew.forecast(NORTH, '05:01', '04:00', COOL);
  await everybodyConfirms(crew, '05:05');
  expect(told(crew)).toEqual([
    '05:00 room: HEAT STOP for East station: stop topping at 10:40 AM MDT (11:40 AM CDT), stop digging at 11:10 AM MDT (12:10 PM CDT).',
  ]);
  await crew.forecast(NORTH, '09:00', '04:00', WARM);
  await everybodyConfirms(crew, '09:05');
  expect(told(crew).at(-1)).toBe(
    '09:00 room: HEAT STOP for North station: stop topping at 10:40 AM MDT, stop digging at 11:10 AM MDT.',
  );
  await crew.say('ruth', null, 'dig again', '13:00');
  expect(told(crew).filter((text) => text.includes('ALL-CLEAR'))).toHaveLength(2);
});

test('a promise that no forecast can keep: its age is told, and people are asked before the time has come', async () => {
  const crew = await newDay();
  const next = (clock: string): string => `2026-10-21 ${clock}`;
  // The last forecast comes at 11:00, and reaches over the next day.
  await crew.forecast(NORTH, '11:00', '11:00', [
    ...WARM.slice(7, 20).map((f) => Math.min(f, 52)),
    40,
    39,
    38,
    37,
    ...WARM,
  ]);
  await crew.passTo(next('05:00'));
  await everybodyConfirms(crew, next('05:05'));
  const [notice] = crew.heardIn('crew');
  expect(notice).toMatch(/^HEAT STOP for North station: stop topping at 10:40 AM/);
  expect(notice).toMatch(/\nOld forecast, of 11:00 AM on 10\/20: 18 h old\.\n/);
  expect(notice).toMatch(/Dig again likely at 8:30 PM\. Wait for the all-clear\./);
  expect((await crew.say('ben', null, 'can we dig', next('12:05')))[0]).toMatch(
    /^No\. HEAT STOP for North station: stopped since 11:10 AM\./,
  );
  const decide = () => crew.delivered.filter(({ kind }) => kind === 'decide');
  await crew.passTo(next('19:29'));
  expect(decide()).toEqual([]);
  await crew.passTo(next('19:30'));
  expect(decide().map(({ recipient }) => recipient)).toEqual([{ person: 'ruth' }, { person: 'mateo' }]);
  expect(crew.heardBy('ruth').at(-1)).toBe(
    'YOU DECIDE: I have no usable forecast since 11:00 AM on 10/20. ' +
      'The all-clear for North station, expected at 8:30 PM, will not come by itself. ' +
      'Measure the roots and ask the station before then; say "dig again" when it is right, or leave it stopped.',
  );
  const [late] = await crew.say('ben', null, 'can we dig', next('20:45'));
  expect(late).toContain('The all-clear expected at 8:30 PM has not come: foreman and grower decide.');
  await crew.passTo(next('22:00'));
  expect(decide()).toHaveLength(2);
  await crew.say('ruth', 'crew', 'dig again', next('22:05'));
  expect(told(crew).at(-1)).toMatch(/ALL-CLEAR for North station/);
});

test('a stop by measured roots without any forecast: people are asked soon, for nothing else will end it', async () => {
  const crew = await newDay();
  await crew.say('mateo', 'crew', 'root 58 at north 40', '13:00');
  await crew.passTo('13:10');
  expect(crew.heardBy('mateo')).toContainEqual(
    expect.stringMatching(
      /^DECIDA USTED: no tengo pronóstico que sirva\. El aviso de sacar otra vez para North station no va a llegar solo\./,
    ),
  );
});
