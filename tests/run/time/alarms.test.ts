import { describe, expect, test } from 'vitest';
import { alarmName, alarmOf } from '../../../src/run/time/alarms.ts';
import type { Alarm } from '../../../src/run/time/alarms.ts';
import { at, crewForEachTest } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';

let crew: Crew;
crewForEachTest((own) => {
  crew = own;
});

/** One of each kind, by the compiler. */
const alarms: { [I in Alarm['is']]: Extract<Alarm, { is: I }> } = {
  weather: { is: 'weather' },
  line: { is: 'line' },
  danger: { is: 'danger', number: 12 },
  outlook: { is: 'outlook', dueMs: at('18:00') },
};

describe('an alarm', () => {
  test.each(Object.values(alarms))('is read from the name that it is stored by: %o', (alarm) => {
    expect(alarmOf(alarmName(alarm))).toEqual(alarm);
  });

  test.each(['', 'weather ', 'outlook', 'outlook soon', 'lines'])('is none by the name "%s"', (name) => {
    expect(alarmOf(name)).toBeNull();
  });

  test('of another version is removed and logged, and holds up no other', async () => {
    const { operation } = crew.bot.roster;
    await crew.bot.book.inOneGo(operation, (page) => page.wakeAt('harvest moon', at('08:00')));
    await crew.say('mateo', null, 'stop digging at 9, mud', '07:55');
    await crew.passTo('08:06');
    expect(crew.logged).toMatchObject([{ what: { alarm: 'harvest moon' } }]);
    expect(await crew.bot.book.inOneGo(operation, (page) => page.nextAlarm(at('08:06')))).toBeNull();
  });
});
