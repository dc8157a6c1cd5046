/** A crew teaches the bot its words. */
import { describe, expect, test } from 'vitest';
import { crewForEachTest } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';

let crew: Crew;
crewForEachTest((fresh) => {
  crew = fresh;
});

const kinds = async (): Promise<string[]> => (await crew.factsSoFar()).map(({ fact }) => fact.kind);
const say = async (who: string, text: string, clock: string): Promise<string> =>
  (await crew.say(who, null, text, clock)).join('\n');
/** The steps of trucks that were written down. */
const steps = async (): Promise<string[]> =>
  (await crew.factsSoFar()).flatMap(({ fact }) => (fact.kind === 'truck-reported' ? [fact.step] : []));

describe('a taught word', () => {
  test.each([
    ['ruth', 'teach "rollin" = loaded', /From now on "rollin" means "loaded"/],
    ['ruth', 'teach rollin means loaded', /"rollin" means "loaded"/],
    ['mateo', 'aprende “rollin” = cargado', /Desde ahora "rollin" quiere decir "cargado"/],
    ['mateo', 'enseña "rollin" quiere decir cargado', /"rollin" quiere decir "cargado"/],
  ])('means what %s says: %s', async (who, text, receipt) => {
    expect(await say(who, text, '10:00')).toMatch(receipt);
    await say('ben', 'rollin', '10:05');
    expect(await steps()).toEqual(['left-field']);
  });

  test('meant nothing before', async () => {
    await say('ben', 'rollin', '10:05');
    expect(await steps()).toEqual([]);
  });

  test('stands in a clause as its meaning would: denied, it reports nothing', async () => {
    await say('ruth', 'teach "rollin" = loaded', '10:00');
    await say('ben', 'not rollin', '10:05');
    expect(await steps()).toEqual([]);
    await say('ben', 'truck 4 rollin', '10:06');
    expect(await steps()).toEqual(['left-field']);
  });

  test('is not a part of another word', async () => {
    await say('ruth', 'teach "rol" = loaded', '10:00');
    await say('ben', 'rolling', '10:05');
    expect(await steps()).toEqual([]);
  });

  test('can be undone, and forgotten', async () => {
    await say('ruth', 'teach "rollin" = loaded', '10:00');
    expect(await say('ruth', 'undo', '10:01')).toMatch(/^Taken back/);
    await say('ben', 'rollin', '10:05');
    expect(await steps()).toEqual([]);
    await say('ruth', 'teach "rollin" = loaded', '10:10');
    expect(await say('ruth', 'forget "rollin"', '10:11')).toMatch(/means nothing any more/);
    await say('ben', 'rollin', '10:15');
    expect(await steps()).toEqual([]);
  });

  test('is taught by foreman and grower only', async () => {
    expect(await say('ben', 'teach "rollin" = loaded', '10:00')).toMatch(/Only grower and foreman can teach/);
    expect(await kinds()).toEqual([]);
  });
});

describe('never makes an order, alarm or all-clear', () => {
  test.each([
    'teach "rollin" = stop digging',
    'teach "rollin" = dig again',
    'teach "rollin" = he is hurt, call 911',
    'teach "rollin" = crowns ok',
    'teach "rollin" = got it',
    'teach "rollin" = undo',
    'teach "rollin" = roots 60',
    'teach "rollin" = remove truck 3',
  ])('%s', async (text) => {
    expect(await say('ruth', text, '10:00')).toMatch(/I can learn words for reports/);
    expect(await kinds()).toEqual([]);
  });

  test.each([
    'teach "fire" = loaded',
    'teach "he is hurt" = loaded',
    'teach "stop digging" = loaded',
    'teach "not" = loaded',
  ])('no word of danger or order is given another meaning: %s', async (text) => {
    expect(await say('ruth', text, '10:00')).toMatch(/means something to me already|no word/);
    expect(await kinds()).toEqual([]);
  });

  test('not with other words either', async () => {
    // "Can we dig" may be taught: it only asks.
    await say('ruth', 'teach "scooby" = digging?', '10:00');
    await say('ruth', 'stop scooby', '10:05');
    expect(await kinds()).not.toContain('notice-raised');
  });

  test('what is danger stays danger', async () => {
    await say('ruth', 'teach "rollin" = loaded', '10:00');
    expect(await say('ben', 'he is hurt, call 911, rollin', '10:05')).toMatch(/Call 911/);
  });
});
