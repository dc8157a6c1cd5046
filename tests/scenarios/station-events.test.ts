/** What happens at the station reaches who needs it: grower and foreman, and the trucks on their way to it or in its line. */
import { expect, test } from 'vitest';
import { z } from 'zod';
import { crewForEachTest } from '../support/crew.ts';
import type { Crew } from '../support/crew.ts';

let crew: Crew;
crewForEachTest(async (fresh) => {
  crew = fresh;
  // Ben and Carla haul, Ana stands in the line, Dale is being loaded; of truck 5 nothing was heard.
  await crew.say('ana', null, 'cargada', '07:00');
  await crew.say('ana', null, 'en la fila, 6 adelante', '07:40');
  await crew.say('ben', null, 'loaded', '07:45');
  await crew.say('carla', null, 'cargada', '07:50');
  await crew.say('dale', null, 'loading', '08:00');
});

/** Who hears what of the station after that message; the sender's own receipt is none of it. */
const told = async (who: string, text: string, clock: string): Promise<Record<string, string>> => {
  const before = crew.delivered.length;
  await crew.say(who, null, text, clock);
  return Object.fromEntries(
    crew.delivered
      .slice(before)
      .filter(({ kind }) => kind === 'station-news')
      .map(({ recipient, said }) => [JSON.stringify(recipient), said.text]),
  );
};
const to = (person: string): string => JSON.stringify({ person });
const ONES = ['ana', 'carla', 'mateo', 'ruth'].map(to);

test('closed till 9: at once to foreman, grower and the trucks that go there, and to nobody else', async () => {
  const heard = await told('ben', 'station closed till 9', '08:12');
  expect(Object.keys(heard).toSorted()).toEqual(ONES);
  expect(heard[to('ruth')]).toBe(
    'North station is closed until 9:00 AM: at least 48 min. Said by Ben at 8:12 AM.\nTrucks still at the field: wait there, loaded.',
  );
  expect(heard[to('carla')]).toBe(
    'North station está cerrada hasta las 9:00 a.m.: por lo menos 48 min. Lo dijo Ben a las 8:12 a.m.\nTrocas que siguen en el campo: esperen ahí, cargadas.',
  );
});

test('the same word again is no news; another hour is, and so is the opening', async () => {
  await told('ben', 'station closed till 9', '08:12');
  expect(await told('ana', 'estación cerrada hasta las 9', '08:15')).toEqual({});
  expect(Object.keys(await told('ana', 'estación cerrada hasta las 10', '08:20'))).toHaveLength(4);
  expect((await told('ben', 'station open', '08:40'))[to('ruth')]).toBe(
    'North station is open. Said by Ben at 8:40 AM.',
  );
  expect(await told('carla', 'la estación ya abrió', '08:41')).toEqual({});
});

test('a closing that is over when it is heard of is no news', async () => {
  const before = crew.delivered.length;
  await crew.say('ben', null, 'station closed till 9', '09:30', { sent: '08:12' });
  expect(crew.delivered.slice(before).map(({ kind }) => kind)).toEqual(['receipt']);
});

test('pilers down and up: all of them is all of them', async () => {
  expect((await told('ben', 'one piler down', '08:12'))[to('ruth')]).toMatch(
    /^North station: 1 of 2 pilers runs\./,
  );
  const all = await told('ben', 'all pilers down', '08:20');
  expect(all[to('ruth')]).toMatch(/^North station: all pilers are down\. Said by Ben/);
  expect(all[to('mateo')]).toMatch(/^North station: todas las apiladoras están paradas\. Lo dijo Ben/);
  expect((await told('ben', 'pilers back up', '08:40'))[to('ruth')]).toBe(
    'North station: all pilers run. Said by Ben at 8:40 AM.',
  );
});

test('loads turned away, with the reason and the truck', async () => {
  const heard = await told('ben', 'they turned me away, too warm', '08:12');
  expect(Object.keys(heard).toSorted()).toEqual(ONES);
  expect(heard[to('ruth')]).toBe(
    'North station turns loads away: too warm. Said by Ben (Truck 2) at 8:12 AM.\nTrucks still at the field: wait there, loaded.',
  );
  expect(Object.keys(await told('ana', 'me rechazaron la carga', '08:30'))).toHaveLength(4);
});

const answers = async (who: string, text: string, clock: string): Promise<string> =>
  (await crew.say(who, null, text, clock)).join('\n');

test('closed till 9 stands in every wait', async () => {
  await crew.say('ben', null, 'station closed till 9', '08:11');
  expect(await answers('ruth', 'how long is the line', '08:12')).toMatch(
    /^North station is closed until 9:00 AM: at least 48 min\./,
  );
  const { lowMin, ...data } = z.looseObject({ lowMin: z.number() }).parse(crew.delivered.at(-1)?.data);
  expect(data).toMatchObject({ leastMin: 48, closedUntil: '2026-10-20T15:00:00.000Z' });
  expect(lowMin).toBeGreaterThanOrEqual(48);
  expect(await answers('mateo', '¿cómo está la fila?', '08:12')).toMatch(
    /^North station está cerrada hasta las 9:00 a\.m\.: por lo menos 48 min\./,
  );
  // An hour's haul later it is open.
  expect(await answers('ruth', 'what is the wait if I leave at 10', '08:13')).not.toContain('closed');
});

test('a truck that would be there before the opening is told to wait at the field', async () => {
  await crew.say('ben', null, 'station closed till 10', '08:11');
  expect(await answers('dale', 'if I leave now?', '08:12')).toContain(
    'Truck 4 may as well wait loaded at the field: the station is closed until 10:00 AM.',
  );
});

test('so is one where nothing at all is known of the line', async () => {
  await crew.say('dale', null, 'loading', '2026-10-21 08:00');
  await crew.say('ruth', null, 'station closed till 10', '2026-10-21 08:11');
  expect(await answers('dale', 'if I leave now?', '2026-10-21 08:12')).toMatch(
    /^North station is closed until 10:00 AM: at least \d+ min\.[^]* Truck 4 may as well wait loaded at the field/,
  );
});

test('closed since last night till this morning counts this morning', async () => {
  await crew.say('ruth', null, 'station closed till 6 am', '22:00');
  expect(await answers('ruth', 'how long is the line', '2026-10-21 05:30')).toMatch(
    /^North station is closed until 6:00 AM: at least 30 min\./,
  );
});

test('all pilers down, and loads turned away, stand in the wait too', async () => {
  await crew.say('ben', null, 'all pilers down', '08:12');
  expect(await answers('ruth', 'how long is the line', '08:15')).toMatch(
    /^All pilers at North station are down since 8:12 AM\./,
  );
  await crew.say('ben', null, 'pilers back up', '08:20');
  await crew.say('ben', null, 'they turned me away, too warm', '08:21');
  expect(await answers('ruth', 'how long is the line', '08:25')).toMatch(
    /^North station turned loads away at 8:21 AM: too warm\./,
  );
});
