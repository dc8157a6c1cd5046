import { describe, expect, test } from 'vitest';
import { crewForEachTest } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';
import { sampleRoster } from '../../support/roster.ts';

let crew: Crew;
crewForEachTest((fresh) => {
  crew = fresh;
});

const NORTH = 'north-station';
/** Hourly from 04:00; passes 60 °F at 12:30, so that the dig stops at 11:10. */
const WARM = [36, 36, 37, 39, 43, 47, 51, 55, 58, 62, 66, 68, 70, 66, 61, 55, 50, 47, 45, 43];
const COOL = WARM.map((temperatureF) => Math.min(temperatureF, 52));

const sent = (kind: string) => crew.delivered.filter((message) => message.kind === kind);
const to = (kind: string): string[] =>
  sent(kind).map(({ recipient }) => ('person' in recipient ? recipient.person : recipient.room));
const inRoom = (): string[] => crew.heardIn('crew').map((text) => text.split('\n')[0] ?? '');

describe('a stop that is not confirmed', () => {
  test('reminds those who must act once, by direct message, and then tells the foreman the names, then the grower', async () => {
    await crew.say('mateo', 'crew', 'stop digging, mud', '09:00');
    await crew.say('ana', null, 'enterado', '09:03');
    await crew.passTo('09:04');
    expect(sent('reminder')).toEqual([]);
    await crew.passTo('09:05');
    expect(to('reminder')).toEqual(['fritz', 'gus']);
    expect(sent('reminder').every(({ said }) => said.ring && said.buttons.length === 1)).toBe(true);
    await crew.say('gus', null, 'got it', '09:07');
    await crew.passTo('09:10');
    expect(to('unseen')).toEqual(['mateo']);
    expect(crew.heardBy('mateo').at(-1)).toBe(
      'PARO POR LODO, faltan de confirmar: Fritz. Confirmaron 3 de 4.',
    );
    await crew.passTo('09:20');
    expect(to('unseen')).toEqual(['mateo', 'ruth']);
    await crew.passTo('23:00');
    expect(sent('reminder')).toHaveLength(2);
    expect(sent('unseen')).toHaveLength(2);
  });

  test('by nobody left says nothing more', async () => {
    await crew.say('mateo', 'crew', 'stop digging, mud', '09:00');
    for (const { id } of sampleRoster.people) await crew.say(id, null, 'got it', '09:05');
    await crew.passTo('12:00');
    expect([...sent('reminder'), ...sent('unseen')]).toEqual([]);
  });

  test('that has ended meanwhile is not asked about', async () => {
    await crew.say('mateo', 'crew', 'stop digging, mud', '09:00');
    await crew.say('mateo', 'crew', 'dig again', '09:05');
    await crew.passTo('12:00');
    expect([...sent('reminder'), ...sent('unseen')]).toEqual([]);
  });

  test('at night lets those sleep who do not work, and asks at five', async () => {
    await crew.say('ruth', null, 'stop digging at 9, mud', '23:00');
    expect(sent('notice').some(({ said }) => said.ring)).toBe(false);
    await crew.passTo('2026-10-21 04:59');
    expect(sent('reminder')).toEqual([]);
    await crew.passTo('2026-10-21 05:00');
    // Stopping begins at nine, so nobody is asked before eight.
    expect(to('reminder')).toEqual([]);
    await crew.passTo('2026-10-21 08:00');
    expect(to('reminder')).toEqual(['mateo', 'fritz', 'gus']);
  });

  test('at night is asked about at once where the crew digs', async () => {
    await crew.say('ana', 'crew', 'cargado', '22:30');
    await crew.say('ruth', null, 'stop digging, mud', '23:00');
    await crew.passTo('23:10');
    // Somebody loads, so their machines run; the foreman is not known to be up.
    expect(to('reminder')).toEqual(['fritz', 'gus']);
    await crew.passTo('2026-10-21 05:00');
    expect(to('reminder')).toEqual(['fritz', 'gus', 'mateo']);
  });
});

describe('off shift', () => {
  test('a person is told in the room only, and is not asked to confirm', async () => {
    expect(await crew.say('fritz', null, 'off shift', '08:00')).toEqual([
      'Off shift: no notices to you alone for ten hours, or until your next load.',
    ]);
    await crew.say('mateo', 'crew', 'stop digging, mud', '09:00');
    expect(to('notice')).toEqual(['crew', 'ruth', 'mateo', 'gus']);
    await crew.passTo('09:20');
    expect(to('reminder')).toEqual(['gus']);
    expect(crew.heardBy('ruth').at(-1)).not.toContain('Fritz');
  });

  test('a person who asked for them gets them still', async () => {
    await crew.say('fritz', null, 'notices when off', '07:59');
    await crew.say('fritz', null, 'off shift', '08:00');
    await crew.say('mateo', 'crew', 'stop digging, mud', '09:00');
    expect(to('notice')).toContain('fritz');
  });

  test.each([
    ['the next report of a truck', 'truck 2 loaded', '10:00'],
    ['"on shift"', 'on shift', '10:00'],
    ['ten hours', 'line?', '18:01'],
  ])('ends with %s', async (_, words, clock) => {
    await crew.say('fritz', null, 'off shift', '08:00');
    await crew.say('fritz', null, words, clock);
    await crew.say('mateo', 'crew', 'stop digging, mud', '18:05');
    expect(to('notice')).toContain('fritz');
  });
});

describe('a drill', () => {
  test('says so first, is confirmed like a real stop, holds nothing, and ends by itself', async () => {
    await crew.say('ruth', 'crew', 'drill: stop digging', '09:00');
    expect(to('notice')).toEqual(['crew', 'ruth', 'mateo', 'fritz', 'gus']);
    expect(crew.heardBy('gus')[0]).toMatch(/^DRILL, only an exercise: keep working\./);
    expect(crew.heardBy('mateo')[0]).toMatch(/^SIMULACRO, es solo práctica: sigan trabajando\./);
    expect(await crew.say('ben', null, 'can we dig', '09:01')).toEqual([
      expect.stringMatching(/^Nobody has stopped it/),
    ]);
    await crew.say('ben', null, 'got it', '09:02');
    await crew.passTo('09:20');
    expect(to('reminder')).toEqual(['mateo', 'fritz', 'gus']);
    expect(crew.heardBy('ruth').at(-1)).toBe(
      'DRILL, not confirmed yet: Mateo, Fritz, Gus. Confirmed by 2 of 5.',
    );
    await crew.passTo('09:30');
    expect(inRoom().at(-1)).toMatch(/^DRILL OVER/);
    expect(await crew.passTo('23:00')).toEqual([]);
  });

  test('is for foreman and grower, and ends on their word', async () => {
    expect(await crew.say('ben', null, 'drill: stop digging', '09:00')).toEqual([
      'Only grower and foreman can call a drill.',
    ]);
    await crew.say('mateo', null, 'simulacro', '09:10');
    expect(await crew.say('ruth', null, 'practice stop', '09:11')).toEqual([
      'A drill is on already. "End drill" ends it.',
    ]);
    await crew.say('ruth', null, 'end drill', '09:15');
    expect(inRoom().at(-1)).toMatch(/^DRILL OVER/);
    expect(await crew.say('ruth', null, 'end drill', '09:16')).toEqual(['There is no drill to end.']);
    expect(await crew.say('ruth', null, 'dig again', '09:17')).toEqual(['The dig is not stopped.']);
  });

  test('is not called while a real stop holds, which stays a stop', async () => {
    await crew.say('ruth', null, 'stop digging, mud', '09:00');
    expect(await crew.say('ruth', null, 'drill', '09:01')).toEqual([
      'The dig is stopped already; nobody is told again.',
    ]);
    expect(await crew.say('ben', null, 'can we dig', '09:02')).toEqual([expect.stringMatching(/^No\. MUD/)]);
  });
});

describe('an order that is heard late', () => {
  test('does not stop a dig that was resumed since, and its sender is told so', async () => {
    await crew.say('ruth', 'crew', 'stop digging, mud', '09:00');
    await crew.say('ruth', 'crew', 'dig again', '10:00');
    const before = sent('notice').length;
    expect(await crew.say('mateo', 'crew', 'paren de sacar, lodo', '11:00', { sent: '09:30' })).toEqual([
      expect.stringMatching(/^Eso se mandó antes de la última orden/),
    ]);
    expect(sent('notice')).toHaveLength(before);
    expect(await crew.say('ben', null, 'can we dig', '11:01')).toEqual([
      expect.stringMatching(/^Nobody has stopped it/),
    ]);
  });

  test('to resume does not end a stop that was ordered since', async () => {
    await crew.say('ruth', 'crew', 'stop digging, mud', '09:00');
    await crew.say('ruth', 'crew', 'stop digging at 11, mud', '10:30');
    expect(await crew.say('mateo', null, 'dig again', '11:00', { sent: '10:00' })).toEqual([
      expect.stringMatching(/^Eso se mandó antes/),
    ]);
    expect(await crew.say('ben', null, 'can we dig', '11:01')).toEqual([expect.stringMatching(/^No\. MUD/)]);
  });

  test('to stop still stops, though the forecast has moved the stop since', async () => {
    await crew.forecast(NORTH, '05:10', '04:00', WARM);
    await crew.forecast(NORTH, '08:00', '04:00', [...WARM.slice(2), 41, 40]);
    expect(inRoom()).toHaveLength(2);
    await crew.say('mateo', null, 'stop digging now', '08:20', { sent: '07:50' });
    expect(await crew.say('ben', null, 'can we dig', '08:30')).toEqual([
      expect.stringMatching(/^No\. HEAT STOP/),
    ]);
  });
});

describe('dig on', () => {
  test('is recorded with the reason, and shown to who asks and on the board', async () => {
    await crew.forecast(NORTH, '05:10', '04:00', WARM);
    await crew.say('mateo', 'crew', 'dig on: station agreed', '11:30');
    expect(crew.heardBy('gus').at(-1)).toBe(
      "ALL-CLEAR for North station: heat stop over, dig again now. The station's own word goes before mine.\nWhy: station agreed.\nOrdered by Mateo.",
    );
    const dug = 'Digging goes on: ordered by Mateo at 11:30 AM, station agreed.';
    expect((await crew.say('ben', null, 'can we dig', '11:40'))[0]).toContain(dug);
    expect((await crew.say('ben', null, 'where is everybody', '11:41'))[0]).toContain(dug);
    // What a person has decided, a new forecast of the same day does not take back.
    expect(await crew.forecast(NORTH, '12:00', '12:00', [66, 68, 70, 70, 68, 62, 58, 52])).toEqual([]);
  });

  test('is not for a driver', async () => {
    await crew.forecast(NORTH, '05:10', '04:00', WARM);
    expect(await crew.say('ben', null, 'dig on: station agreed', '11:30')).toContain(
      'Only grower and foreman can start the dig again.',
    );
  });
});

describe('the station’s own word', () => {
  test('keeps the dig stopped while it is closed, whatever the forecast says', async () => {
    await crew.forecast(NORTH, '05:10', '04:00', WARM);
    await crew.say('ben', 'crew', 'north station closed till 11 pm', '19:00');
    await crew.passTo('22:59');
    expect(inRoom().filter((text) => text.startsWith('ALL-CLEAR'))).toEqual([]);
    expect((await crew.say('ana', null, '¿se puede sacar?', '22:59'))[0]).toContain(
      'North station está cerrada hasta las 11:00 p.m., dijo Ben a las 7:00 p.m.',
    );
    await crew.passTo('23:00');
    expect(inRoom().at(-1)).toMatch(/^ALL-CLEAR/);
  });

  test('without a stop says that there is nowhere to haul to', async () => {
    await crew.say('ben', 'crew', 'north station closed till 6 pm', '14:00');
    expect(await crew.say('dale', null, 'can we dig', '14:30')).toEqual([
      'No: there is nowhere to haul to.\nNorth station is closed until 6:00 PM, Ben said at 2:00 PM.',
    ]);
  });

  test('"station open" from foreman or grower ends a stop, from a driver it does not', async () => {
    await crew.forecast(NORTH, '05:10', '04:00', WARM);
    await crew.passTo('12:00');
    await crew.say('ben', 'crew', 'north station is open', '12:30');
    // The advice, the order and the receipt.
    expect(inRoom()).toHaveLength(3);
    await crew.say('ruth', 'crew', 'north station is open', '13:00');
    expect(crew.heardBy('gus').at(-1)).toMatch(
      /^ALL-CLEAR for North station: heat stop over, dig again now.*\nOrdered by Ruth\.$/,
    );
  });
});

describe('the frost hold', () => {
  const COLD = [44, 40, 36, 32, 29, 27, 25, 24, 23, 22, 22, 23, 25, 29, 33, 38, 42, 45];

  test('is lifted by foreman or grower who cut crowns, not by a driver, nor without', async () => {
    await crew.forecast(NORTH, '16:30', '17:00', COLD);
    expect(inRoom()).toEqual([
      'FROST HOLD for North station: stop topping at 9:00 PM, stop digging at 12:00 AM on 10/21.',
    ]);
    const morning = (clock: string) => `2026-10-21 ${clock}`;
    await crew.say('ben', 'crew', 'crowns ok at north 40', morning('08:00'));
    expect(await crew.say('mateo', null, 'dig again', morning('08:10'))).toContainEqual(
      expect.stringMatching(/^Paro por helada: primero corten coronas/),
    );
    await crew.say('ruth', 'crew', 'crowns frozen at north 40', morning('08:20'));
    expect((await crew.say('ben', null, 'can we dig', morning('08:30')))[0]).toMatch(/^No\. FROST HOLD/);
    await crew.say('mateo', 'crew', 'coronas bien en north 40', morning('10:00'));
    expect(crew.heardBy('gus').at(-1)).toMatch(
      /^ALL-CLEAR for North station: frost hold over, dig again now.*\nOrdered by Mateo\.$/,
    );
  });

  test('that a person ordered is lifted by a crown check as well, and by a reason', async () => {
    await crew.say('ruth', null, 'stop digging, frost', '06:00');
    expect(await crew.say('ruth', null, 'dig again', '08:00')).toEqual([
      expect.stringMatching(/^Frost hold: cut crowns first/),
    ]);
    await crew.say('ruth', null, 'crowns ok', '08:10');
    expect(inRoom().at(-1)).toMatch(/^ALL-CLEAR/);
    await crew.say('ruth', null, 'stop digging, frost', '08:30');
    await crew.say('ruth', null, 'dig on: only the headland was frozen', '08:40');
    expect(inRoom().at(-1)).toMatch(/^ALL-CLEAR/);
  });

  test('is raised as a watch by an alert of the weather service alone', async () => {
    const alert = {
      id: 'a',
      event: 'Freeze Warning',
      onsetMs: Date.parse('2026-10-21T02:00-06:00'),
      endsMs: null,
    };
    await crew.forecast(NORTH, '16:30', '17:00', COOL, '16:30', { freezeAlerts: [alert] });
    expect(crew.heardBy('ruth')).toEqual([
      'FROST LIKELY for North station: do not top ahead of the digger. Dig all that is topped before 1:30 AM on 10/21.\n' +
        'Why: the weather service has a freeze alert out.\n' +
        'Forecast of 4:30 PM.',
    ]);
    expect(sent('notice').some(({ said }) => said.ring || said.buttons.length > 0)).toBe(false);
  });
});

test('a mud hold shows the rain that the forecasts tell of', async () => {
  const rain = [
    {
      fromMs: Date.parse('2026-10-20T05:00-06:00'),
      toMs: Date.parse('2026-10-20T09:00-06:00'),
      inches: 0.27,
    },
    {
      fromMs: Date.parse('2026-10-20T12:00-06:00'),
      toMs: Date.parse('2026-10-20T18:00-06:00'),
      inches: 0.82,
    },
  ];
  await crew.forecast(NORTH, '05:10', '05:00', COOL, '05:10', { rain });
  await crew.say('mateo', 'crew', 'too wet, stop digging', '09:00');
  expect(crew.heardBy('gus')[0]).toContain(
    'Rain by the forecast: 0.27 in in the last 24 h, 0.82 in in the next 24 h.',
  );
});

describe('a heat stop that was overridden', () => {
  test('comes back when roots are measured above the limit, and the receipt says what follows', async () => {
    await crew.forecast(NORTH, '05:00', '04:00', WARM);
    await crew.say('ruth', 'crew', 'dig on: station agreed', '12:00');
    expect(inRoom().at(-1)).toMatch(/^ALL-CLEAR for North station: heat stop over/);
    expect(await crew.say('mateo', null, 'root 58 at north 40', '13:00')).toContainEqual(
      expect.stringMatching(
        /North 40, 1:00 p\.m\.\nArriba del límite de 55 °F para North station: se para de sacar ahora\.\nAmontonada así pierde unas 0\.05 lb más de azúcar por tonelada y día que a 55 °F \(estimado\)\.$/,
      ),
    );
    expect((await crew.say('ben', null, 'can we dig', '13:05'))[0]).toMatch(
      /^No\. HEAT STOP for North station: stopped since 1:00 PM\. Why: roots measured at 58 °F/,
    );
    expect(await crew.say('ben', null, 'root 59 at north 40', '13:10')).toContainEqual(
      expect.stringMatching(/\nAbove the limit of 55 °F for North station: the dig stays stopped\.$/),
    );
  });
});
