/** A notice is one message, kept up to date where the platform can change what was posted. */
import { describe, expect, test } from 'vitest';
import { crewForEachTest, crewOn } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';
import { rosterOnSlack } from '../../support/roster.ts';

const NORTH = 'north-station';
/** Hourly from 04:00: topping stops at 10:40, digging at 11:10. */
const WARM = [36, 36, 37, 39, 43, 47, 51, 55, 58, 62, 66, 68, 70, 66, 61, 55, 50, 47, 45, 43];
/** Two hours later. */
const LATER = [34, 35, ...WARM.slice(0, -2)];

let crew: Crew;
crewForEachTest(async (_, database) => {
  crew = await crewOn(database, {
    roster: { ...rosterOnSlack, operation: `seen-${crypto.randomUUID()}` },
    bot: { platforms: ['slack'], editable: ['slack'] },
    platform: 'slack',
  });
});

const inRoom = () =>
  crew.delivered
    .filter(({ recipient }) => 'room' in recipient)
    .map(({ id, said, replaces }) => ({ id: `bot-${id}`, text: said.text, replaces }));

describe('who has seen an order', () => {
  test('is told in the order itself: a confirmation has no line of its own in the room', async () => {
    await crew.forecast(NORTH, '10:00', '04:00', WARM);
    const [order] = inRoom();
    expect(order?.text).not.toContain('Seen by');
    expect(await crew.say('gus', 'crew', 'got it', '10:02')).toHaveLength(3);
    expect(await crew.say('fritz', null, '👍', '10:03')).toContain('Thanks, noted that you have seen it.');
    const [, first, second, ...others] = inRoom();
    expect(others).toEqual([]);
    expect(first).toMatchObject({ replaces: order?.id });
    expect(first?.text).toMatch(
      /^HEAT STOP[^]*\nSeen by 1 of 3: Gus\.\n\nPARO POR CALOR[^]*\nEnterados 1 de 3: Gus\.$/,
    );
    expect(second?.text).toContain('\nSeen by 2 of 3: Fritz, Gus.');
    expect(second?.replaces).toBe(first?.id);
    // Foreman and grower see it grow too.
    const toRuth = crew.delivered.filter(({ to }) => 'user' in to && to.user === 'ruth');
    expect(toRuth.map(({ replaces }) => replaces !== null)).toEqual([false, true, true]);
    expect(toRuth.at(-1)?.said.ring).toBe(false);
  });

  test('is not told anew where nothing has changed, nor after the end', async () => {
    await crew.forecast(NORTH, '10:00', '04:00', WARM);
    await crew.say('gus', 'crew', 'got it', '10:02');
    const before = inRoom().length;
    await crew.say('gus', 'crew', 'got it', '10:03');
    await crew.say('mateo', 'crew', 'dig on: station agreed', '10:05');
    await crew.say('fritz', 'crew', 'got it', '10:06');
    expect(
      inRoom()
        .slice(before)
        .map(({ text }) => text.split(/[ :]/)[0]),
    ).toEqual(['ALL-CLEAR']);
  });
});

describe('a message of a stop', () => {
  test('is changed in place by a later time, and posted anew for an earlier one, as an order and at the end', async () => {
    await crew.forecast(NORTH, '05:00', '04:00', WARM);
    await crew.passTo('09:40');
    await crew.forecast(NORTH, '09:50', '04:00', LATER);
    await crew.forecast(NORTH, '10:10', '04:00', LATER);
    await crew.forecast(NORTH, '10:30', '04:00', WARM);
    await crew.say('ruth', null, 'dig on: station agreed', '10:40');
    const told = inRoom();
    expect(told.map(({ text }) => /^[A-Z-]+ [^:]*:/.exec(text)?.[0])).toEqual([
      'HEAT STOP for North station:',
      'HEAT STOP for North station:',
      'HEAT STOP for North station, NEW TIME:',
      'HEAT STOP for North station, NEW TIME:',
      'ALL-CLEAR for North station:',
    ]);
    expect(told.map(({ replaces }) => replaces)).toEqual([null, null, told[1]?.id, null, null]);
  });
});
