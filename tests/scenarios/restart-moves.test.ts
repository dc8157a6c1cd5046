/** A dig that is stopped, and a restart that is put off: whoever waits hears of it, and nobody is ordered anew. */
import { expect, test } from 'vitest';
import { crewForEachTest } from '../support/crew.ts';
import type { Crew } from '../support/crew.ts';

let crew: Crew;
crewForEachTest((fresh) => {
  crew = fresh;
});

const NORTH = 'north-station';
/** Hourly from 04:00: topping stops at 10:40, digging at 11:10. */
const WARM = [36, 36, 37, 39, 43, 47, 51, 55, 58, 62, 66, 68, 70, 66, 61, 55, 50, 47, 45, 43];
const LONGER = WARM.map((f, hour) => (hour > 12 ? Math.max(f, Math.min(70, f + 9)) : f));

test('is told to the room, foreman and grower without an order, a button or a ring, and is not to be confirmed again', async () => {
  await crew.forecast(NORTH, '05:10', '04:00', WARM);
  await crew.passTo('09:40');
  await crew.say('gus', null, 'got it', '09:45');
  await crew.passTo('11:10');
  const before = crew.delivered.length;
  await crew.forecast(NORTH, '13:10', '04:00', LONGER);
  const told = crew.delivered.slice(before).filter(({ kind }) => kind === 'notice');
  expect(told.map(({ recipient }) => ('room' in recipient ? 'room' : recipient.person)).toSorted()).toEqual([
    'mateo',
    'room',
    'ruth',
  ]);
  for (const { said } of told) expect(said).toMatchObject({ ring: false, buttons: [] });
  expect(crew.heardBy('ruth').at(-1)).toMatch(
    /^HEAT STOP for North station: stopped since 11:10 AM\.\n[^]*\nDig again likely at \d+:\d\d PM\. Wait for the all-clear\.$/,
  );
  await crew.passTo('13:40');
  expect(
    crew.delivered
      .slice(before)
      .filter(
        ({ kind, recipient }) => kind === 'reminder' && 'person' in recipient && recipient.person === 'gus',
      ),
  ).toEqual([]);
});
