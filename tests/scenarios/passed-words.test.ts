/** Foreman and grower have words passed on: to everybody or to some, with who has seen them, and never as an order. */
import { expect, test } from 'vitest';
import { crewForEachTest } from '../support/crew.ts';
import type { Crew } from '../support/crew.ts';

let crew: Crew;
crewForEachTest((fresh) => {
  crew = fresh;
});

/** Who got words that were passed on since the last look, and what was said of them. */
const passed = async (who: string, text: string, clock: string, room: string | null = null) => {
  const before = crew.delivered.length;
  await crew.say(who, room, text, clock);
  const sent = crew.delivered.slice(before);
  const to = sent
    .filter(({ kind }) => kind === 'passed-words')
    .map(({ recipient }) => ('room' in recipient ? recipient.room : recipient.person))
    .toSorted();
  return { to, sent };
};
const others = ['ana', 'ben', 'carla', 'crew', 'dale', 'eli', 'fritz', 'gus'];

test('to everybody: each gets them in the sender’s own words, and the room too', async () => {
  const { to, sent } = await passed('ruth', 'tell everybody: start 5:00 at South 80', '18:00');
  expect(to).toEqual([...others, 'mateo'].toSorted());
  expect(
    sent.find(({ recipient }) => 'person' in recipient && recipient.person === 'ben')?.said,
  ).toMatchObject({
    text: 'Ruth to everybody: "start 5:00 at South 80"\nRead and reply only when parked: "got it".',
    buttons: [{ words: 'got it' }],
  });
  expect(crew.heardBy('ana')).toEqual([
    'Ruth a todos: "start 5:00 at South 80"\nLean y contesten solo estacionados: "ENTERADO".',
  ]);
  expect(crew.heardBy('ruth')).toEqual([
    'Passed on to 8 people and the room: "start 5:00 at South 80". "Who has not seen it" tells who has.',
  ]);
});

test('in Spanish, and to those who are off shift: tomorrow’s start concerns them', async () => {
  await crew.say('ben', null, 'off shift', '17:00');
  const { to } = await passed('mateo', 'diles a todos que empezamos a las 5 en South 80', '18:00');
  expect(to).toEqual([...others, 'ruth'].toSorted());
  expect(crew.heardBy('ben').at(-1)).toBe(
    'Mateo to everybody: "empezamos a las 5 en South 80"\nRead and reply only when parked: "got it".',
  );
});

test('to one, or two', async () => {
  expect((await passed('ruth', 'tell Mateo the fuel truck comes at noon', '09:00')).to).toEqual(['mateo']);
  expect(crew.heardBy('mateo').at(-1)).toMatch(/^Ruth: "the fuel truck comes at noon"\n/);
  expect((await passed('ruth', 'tell ana and ben: bring your logbooks', '09:01')).to).toEqual(['ana', 'ben']);
  expect((await passed('mateo', 'dile a Ana que venga al taller', '09:02')).to).toEqual(['ana']);
});

test('who has seen them', async () => {
  await crew.say('ruth', null, 'tell ana and ben: bring your logbooks', '09:00');
  expect(await crew.say('ben', null, 'got it', '09:02')).toEqual(['Thanks, noted that you have seen it.']);
  expect(await crew.say('ruth', null, 'who has not seen it', '09:03')).toEqual([
    '"bring your logbooks", not confirmed yet: Ana. Confirmed by 1 of 2.',
  ]);
  await crew.say('ana', null, 'enterada', '09:04');
  expect(await crew.say('ruth', null, 'who has not seen it', '09:05')).toEqual(['Everybody has seen it.']);
  // A stop that is ordered after it is what is asked for then.
  await crew.say('ruth', null, 'stop digging, mud', '09:06');
  expect((await crew.say('ruth', null, 'who has not seen it', '09:07')).join()).toMatch(/^MUD HOLD/);
});

test('it stops and starts nothing, and the sender hears how to do that', async () => {
  const { sent } = await passed('ruth', 'tell everybody: stop digging', '09:00');
  expect(sent.filter(({ kind }) => kind === 'notice')).toEqual([]);
  expect(sent.find(({ kind }) => kind === 'words-passed')?.said.text).toMatch(
    /"stop digging"\. .*\nThat is passed on as words and stops nothing: for an order, write "stop digging" or "dig again" alone\.$/,
  );
  expect(await crew.say('ben', null, 'can we dig', '09:01')).not.toEqual([expect.stringMatching(/^No[.:]/)]);
  await crew.say('ruth', null, 'stop digging, mud', '09:02');
  await passed('ruth', 'diles a todos que ya pueden sacar', '09:03');
  expect((await crew.say('ben', null, 'can we dig', '09:04')).join()).toMatch(/^No\./);
});

test('by foreman and grower only: others are refused in their own language', async () => {
  const spanish = await passed('ana', 'diles a todos que ya me voy', '09:00');
  expect(spanish.to).toEqual([]);
  expect(spanish.sent.map(({ said }) => said.text)).toEqual([
    'Solo el mayordomo y el dueño mandan recados por aquí. Dígaselo a ellos o en la sala.',
  ]);
  const english = await passed('ben', 'tell everybody: lunch at my truck', '09:01');
  expect(english.sent.map(({ said }) => said.text)).toEqual([
    'Only grower and foreman have words passed on here. Tell them, or say it in the room.',
  ]);
});

test('in a room it needs the colon, and is not said there again', async () => {
  expect((await passed('ruth', 'tell everybody: start 5:00 at South 80', '18:00', 'crew')).to).toEqual(
    [...others, 'mateo'].filter((one) => one !== 'crew').toSorted(),
  );
  expect((await passed('ruth', 'tell mateo he still owes me lunch', '18:01', 'crew')).to).toEqual([]);
  const driver = await passed('ben', 'tell everybody: lunch at my truck', '18:02', 'crew');
  expect(driver.to).toEqual([]);
  expect(driver.sent.map(({ kind }) => kind)).not.toContain('refusal');
});

test('words of danger are an alarm, whoever is to be told', async () => {
  const { to, sent } = await passed('ruth', 'tell everybody: Fritz is hurt at the digger', '09:00');
  expect(to).toEqual([]);
  // Told to others, it may be an old story: the sender is asked at once, before anything else.
  expect(sent.map(({ kind, data }) => ({ kind, data }))).toMatchObject([
    { kind: 'offer', data: { danger: true } },
  ]);
});
