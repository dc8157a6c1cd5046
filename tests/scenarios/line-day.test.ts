/**
 * A day at the scale line as the crew tells it: the line grows, drivers count, a second piler opens, a piler breaks. The
 * expectations are what the crew saw and what it must be told, not figures of the bot's own.
 */
import { expect, test } from 'vitest';
import { z } from 'zod';
import { crewForEachTest } from '../support/crew.ts';
import type { Crew } from '../support/crew.ts';

let crew: Crew;
crewForEachTest((fresh) => {
  crew = fresh;
});

const toRoom = (who: string, text: string, clock: string) =>
  crew.say(who, 'crew', text, clock, { addressed: true });

const looseData = z.record(z.string(), z.unknown());
/** The content of the newest answer, as machines read it. */
const data = (): Record<string, unknown> => looseData.parse(crew.delivered.at(-1)?.data);
const numberIn = (name: string): number => Number(data()[name]);
const lastButtons = (): string[] => crew.delivered.at(-1)?.said.buttons.map(({ words }) => words) ?? [];
const medianAt = async (clock: string): Promise<number> => {
  await toRoom('ben', 'how long is the line', clock);
  return numberIn('medianMin');
};
/** The clock goes on by five minutes at a time, as it does for the live bot. */
const watchUntil = async (fromMin: number, toMin: number): Promise<string[]> => {
  const told: string[] = [];
  for (let min = fromMin; min <= toMin; min += 5)
    told.push(
      ...(await crew.passTo(
        `${String(Math.floor(min / 60)).padStart(2, '0')}:${String(min % 60).padStart(2, '0')}`,
      )),
    );
  return told;
};
const TICKET = 'gross 79840 tare 29320';

test('a day at the line, as the crew tells it', { timeout: 200_000 }, async () => {
  await crew.say('ruth', null, 'line limit 45 min', '06:00');
  // Nothing is known yet, and it says so.
  expect(await toRoom('ben', 'how long is the line', '06:30')).toEqual([
    expect.stringMatching(/^I have no word from the line at North station/),
  ]);

  // The driver who has just got in line is asked to count, once; a button does it.
  await toRoom('ben', 'loaded', '07:00');
  expect(await toRoom('ben', 'in line', '07:25')).toEqual([
    expect.stringContaining('How many trucks are ahead of you?'),
  ]);
  expect(lastButtons().slice(0, 4)).toEqual(['0 ahead', '5 ahead', '10 ahead', '20 ahead']);
  await toRoom('ben', '5 ahead', '07:26');
  expect(await toRoom('ben', 'in line', '07:30')).toEqual([expect.not.stringContaining('How many')]);
  // Two pilers take a truck each in a few minutes (about 250 tons an hour in loads of 20 tons).
  expect(await medianAt('07:31')).toBeGreaterThan(5);
  expect(numberIn('medianMin')).toBeLessThan(45);

  // A count is fresh: nobody else is asked. On the road nobody ever is.
  await toRoom('ana', 'cargada', '07:10');
  expect(lastButtons()).toEqual(['troca 1 en la fila', 'troca 1 descargué']);
  expect(await toRoom('ana', 'en la fila', '07:35')).toEqual([expect.not.stringContaining('adelante')]);
  await toRoom('ben', `ticket 48210 ${TICKET}`, '07:58');
  await toRoom('ana', `boleta 48215 bruto 79840 tara 29320`, '08:12');

  // The line grows past the limit: grower and foreman are told, each in their language, once.
  await toRoom('eli', 'truck 5 loaded', '08:10');
  const quiet = await medianAt('08:35');
  await toRoom('eli', 'in line, 22 ahead', '08:40');
  const told = await watchUntil(8 * 60 + 41, 8 * 60 + 59);
  expect(told).toEqual([
    expect.stringMatching(
      /^Line at North station: about \d+ min \(.*over your limit of 45 min\. Serial 48215/,
    ),
    expect.stringMatching(/^Fila en North station: unos \d+ min .*más que su límite de 45 min/),
  ]);
  expect(crew.heardBy('ruth').filter((text) => text.includes('limit of 45'))).toHaveLength(1);
  expect(crew.heardBy('mateo').filter((text) => text.includes('límite de 45'))).toHaveLength(1);
  const long = await medianAt('09:00');
  expect(long).toBeGreaterThan(quiet);
  expect(data()['evidence']).toMatchObject({ serial: '48215' });

  // Two pilers are quicker than one; none is slower than either.
  await toRoom('eli', 'second piler open', '09:00');
  const faster = await medianAt('09:01');
  expect(faster).toBeLessThan(long);
  await toRoom('eli', 'both pilers down', '09:10');
  expect(await medianAt('09:11')).toBeGreaterThan(faster);

  // Nobody is weighed: told once, though the clock goes on.
  const stopped = await watchUntil(9 * 60 + 15, 12 * 60);
  expect(stopped.filter((text) => text.includes('is not moving, it seems'))).toEqual([
    expect.stringMatching(/no truck of ours weighed for \d+ min\. Waiting: Truck 5\./),
  ]);
  expect(stopped.filter((text) => text.includes('no avanza'))).toHaveLength(1);
  expect(stopped).toHaveLength(2);

  // It moves again, and the line is gone: nobody is told.
  await toRoom('eli', `piler back up`, '12:05');
  await toRoom('eli', `ticket 48260 ${TICKET}`, '12:25');
  await toRoom('carla', 'la fila está vacía', '12:30');
  expect(await watchUntil(12 * 60 + 31, 13 * 60)).toEqual([]);
  expect(await medianAt('12:40')).toBeLessThan(20);
});

test('"if I leave at 2" adds the haul as it was driven, and tells when the truck would be there', async () => {
  await toRoom('ben', 'loaded', '07:00');
  await toRoom('ben', 'in line, 8 ahead', '07:40');
  await toRoom('ben', `ticket 48210 ${TICKET}`, '08:20');
  const [answer] = await toRoom('ben', 'what is the wait if I leave at 9', '08:30');
  expect(answer).toMatch(/^Leave at 9:00 AM, at North station about 9:40 AM: wait about \d+ min/);
  expect(data()).toMatchObject({ leaveInMin: 30, haulMin: 40, arriveInMin: 70 });
  expect(numberIn('lowMin')).toBeLessThanOrEqual(numberIn('medianMin'));
  expect(numberIn('highMin')).toBeGreaterThanOrEqual(numberIn('medianMin'));
});

test('how many trucks: with the round, the digger’s share of waiting, and the cautious bound', async () => {
  for (const [who, truck, at] of [
    ['ana', '1', '07:00'],
    ['ben', '2', '07:11'],
    ['carla', '3', '07:22'],
  ] as const)
    await toRoom(who, `truck ${truck} loaded`, at);
  const [answer] = await toRoom('ruth', 'how many trucks do we need', '07:30');
  expect(answer).toMatch(/^\d+ trucks keep the digger going; 3 haul now\.\nA round takes about/);
  expect(data()['courses']).toMatchObject([
    { trucks: 2 },
    { trucks: 3 },
    { trucks: 4 },
    { trucks: numberIn('needed') },
  ]);
  expect(await crew.say('mateo', null, '¿necesitamos otra troca?', '07:31')).toEqual([
    expect.stringMatching(/la sacadora no espera; ahora andan 3\./),
  ]);
});

test('how many trucks, with a line that is known: over the next hours, as it may go', async () => {
  await toRoom('ana', 'truck 1 loaded', '07:00');
  await toRoom('ben', 'truck 2 loaded', '07:05');
  await toRoom('ben', 'in line, 25 ahead', '07:30');
  const [answer] = await toRoom('ruth', 'how many trucks do we need', '07:31');
  expect(answer).toContain('\nOver the next 4 hours, as the line may go:\nWith 1 truck: the digger waits ');
  expect(data()).toMatchObject({ known: true, onPaths: true });
  const spanish = await crew.say('mateo', null, '¿necesitamos otra troca?', '07:32');
  expect(spanish.join()).toContain('En las próximas 4 horas, según como vaya la fila:');
});

test('a truck need not hurry to a station that is closed', async () => {
  await toRoom('ben', 'truck 2 loaded', '07:00');
  await toRoom('ben', 'in line, 14 ahead', '07:25');
  await toRoom('mateo', 'la estación está cerrada', '07:40');
  await toRoom('ana', 'en el campo', '07:40');
  await toRoom('dale', 'truck 4 loaded', '07:44');
  const [answer] = await toRoom('dale', 'if I leave now?', '07:45');
  expect(answer).toMatch(
    /Truck 4 may as well wait loaded at the field: the line does not move\. Every 10 min of that bring the load in about \d+ min later\./,
  );
  expect(data()['hold']).toEqual({ truck: '4', because: 'standstill' });
});
