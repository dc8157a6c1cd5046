/** What was not understood is counted, kept, and written out without names and numbers. */
import { expect, test } from 'vitest';
import { exportedPhrases } from '../../src/command/export-phrases.ts';
import { crewForEachTest } from '../support/crew.ts';
import type { Crew } from '../support/crew.ts';

let crew: Crew;
crewForEachTest((fresh) => {
  crew = fresh;
});

const exported = async () =>
  exportedPhrases(await crew.operation.store.phrases.unread(crew.bot.roster.operation), crew.bot.roster);

test('what nothing was made of, and what had to be asked, the commonest first', async () => {
  await crew.say('ben', null, 'grumpf zargle 48213', '10:00');
  await crew.say('ben', null, 'nose to tail out here, I count 9', '10:05');
  await crew.say('dale', null, 'Grumpf zargle 48999', '10:10');
  // Understood, and talk in the room: neither is kept.
  await crew.say('ben', null, 'loaded', '10:15');
  await crew.say('ben', 'crew', 'what a ball game', '10:20');
  expect(await exported()).toEqual([
    { said: 'grumpf zargle #', times: 2 },
    { said: 'nose to tail out here, i count #', times: 1 },
  ]);
});

test('names of the lists, numbers and addresses are masked', async () => {
  await crew.say(
    'ben',
    null,
    'grumpf Carla at Creek Bottom zargle 10:15, 79,840 mail me@example.com',
    '10:00',
  );
  const [phrase] = await exported();
  expect(phrase?.said).toBe('grumpf @person at @field zargle #, # mail @address');
});

test('is counted by what the sender was told', async () => {
  await crew.say('ben', null, 'grumpf zargle', '10:00');
  await crew.say('ben', null, 'nose to tail out here, I count 9', '10:05');
  await crew.say('ben', null, 'loaded', '10:10');
  const text = await crew.operation.metrics.registry.metrics();
  expect(text).toContain('fieldbell_messages_unread_total{platform="local",outcome="nothing"} 1');
  expect(text).toContain('fieldbell_messages_unread_total{platform="local",outcome="asked"} 1');
});
