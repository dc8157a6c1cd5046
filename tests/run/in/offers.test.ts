/** What a message only may mean is asked of its sender. */
import { describe, expect, test } from 'vitest';
import { crewForEachTest } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';

let crew: Crew;
crewForEachTest((fresh) => {
  crew = fresh;
});

const kinds = async (): Promise<string[]> => (await crew.factsSoFar()).map(({ fact }) => fact.kind);
const where = async (truck: string, clock: string): Promise<string> =>
  (await crew.say('ruth', null, `where is truck ${truck}`, clock)).join();

/** Nobody says in so many words that this truck stands in the scale line. */
const IN_LINE = 'nose to tail out here, I count 9';

describe('a message that may mean something', () => {
  test('writes nothing down: its sender alone is asked, also where the crew reads along', async () => {
    expect((await crew.say('ben', 'crew', IN_LINE, '10:15')).join()).toMatch(
      /^You wrote: "nose to tail .*"\nWhich of these shall I write down\?\n1\. Truck 2: in the scale line/,
    );
    expect(crew.heardIn('crew')).toEqual([]);
    expect(await kinds()).toEqual(['reading-offered']);
  });

  test.each(['1', 'yes', 'Yes.', '👍', '👍🏽', 'the first one'])(
    'is taken as said at its own time when "%s" is answered',
    async (answer) => {
      await crew.say('ben', 'crew', IN_LINE, '10:15');
      expect((await crew.say('ben', null, answer, '10:25')).join()).toMatch(
        /Truck 2: in the scale line.*10:15 AM/,
      );
      expect(await kinds()).toContain('line-seen');
    },
  );

  test('is taken once', async () => {
    await crew.say('ben', 'crew', IN_LINE, '10:15');
    await crew.say('ben', null, 'choose 1.1', '10:16');
    const before = await kinds();
    expect(await crew.say('ben', null, 'choose 1.1', '10:17')).toEqual([
      'That question is over. Please say it again.',
    ]);
    expect(await kinds()).toEqual(before);
  });

  test('is left when none of it is meant', async () => {
    await crew.say('ben', 'crew', IN_LINE, '10:15');
    expect((await crew.say('ben', null, 'no', '10:16')).join()).toContain('Nothing written down');
    expect(await kinds()).toEqual(['reading-offered', 'reading-chosen']);
    expect(await crew.say('ben', 'crew', 'yes', '10:17')).toEqual([]);
  });

  test('is over after half an hour, with the next report, and with the next question', async () => {
    await crew.say('ben', 'crew', IN_LINE, '10:15');
    expect((await crew.say('ben', null, 'choose 1.1', '10:46')).join()).toContain('over');
    await crew.say('ben', 'crew', IN_LINE, '10:50');
    await crew.say('ben', 'crew', 'truck 2 dumped', '10:55');
    expect((await crew.say('ben', null, 'choose 2.1', '10:56')).join()).toContain('over');
    await crew.say('ana', 'crew', IN_LINE, '11:00');
    await crew.say('ana', 'crew', 'fila larguísima, cuento 12', '11:01');
    expect((await crew.say('ana', null, 'escojo 3.1', '11:02')).join()).toContain('ya pasó');
  });

  test('is answered by nobody else', async () => {
    await crew.say('ben', 'crew', IN_LINE, '10:15');
    expect((await crew.say('eli', null, 'choose 1.1', '10:16')).join()).toContain('over');
    expect(await where('5', '10:17')).not.toContain('scale line');
  });

  test('is asked again when it is changed to something that may mean something else', async () => {
    await crew.say('ben', 'crew', 'loaded', '10:00', { id: 'first' });
    expect((await crew.edit('ben', 'crew', 'first', IN_LINE, '10:01')).join()).toContain('could not');
    expect(await where('2', '10:02')).toContain('hauling since 10:00 AM');
  });

  test('can be undone like anything else that was said', async () => {
    await crew.say('ben', 'crew', IN_LINE, '10:15');
    await crew.say('ben', null, '1', '10:16');
    expect((await crew.say('ben', null, 'undo', '10:17')).join()).toMatch(/^Taken back: Truck 2/);
  });
});

describe('an order to the whole crew', () => {
  test('is read back to the manager where it is not said in so many words, and given on the word', async () => {
    expect((await crew.say('mateo', 'crew', 'shut her down everybody, too hot', '13:00')).join()).toContain(
      'Avisar a todos que paren de sacar',
    );
    expect(await kinds()).toEqual(['reading-offered']);
    await crew.say('mateo', null, 'sí', '13:01');
    expect(await kinds()).toContain('notice-raised');
  });

  test('is not offered to a driver', async () => {
    const answers = await crew.say('ben', 'crew', 'shut her down everybody, too hot', '13:00');
    expect(answers.join()).not.toContain('stop digging');
    expect(await kinds()).not.toContain('notice-raised');
  });
});

describe('words that may tell of danger', () => {
  const HIDDEN = 'his arm is in the chain and he is not answering';

  test('are asked about at once, where they were written', async () => {
    expect((await crew.say('ben', 'crew', HIDDEN, '10:15')).join()).toContain(
      'Is somebody hurt or in danger? If so, call 911 now',
    );
    expect(crew.heardIn('crew')).toHaveLength(1);
    expect(await kinds()).not.toContain('emergency-called');
  });

  test('alarm grower and foreman on the first word', async () => {
    await crew.say('ben', 'crew', HIDDEN, '10:15');
    await crew.say('ben', 'crew', 'yes', '10:15');
    expect(await kinds()).toContain('emergency-called');
    expect(crew.heardBy('ruth').join()).toContain(HIDDEN);
  });

  test('reach grower and foreman in a minute where no answer comes, and not where one came', async () => {
    await crew.say('ben', 'crew', HIDDEN, '10:15');
    await crew.passTo('10:17');
    expect(crew.heardBy('ruth').join()).toMatch(/Is somebody hurt\? Ben .*Call Ben now/);
    await crew.say('eli', 'crew', HIDDEN, '10:20');
    await crew.say('eli', 'crew', 'no', '10:20');
    await crew.passTo('10:30');
    expect(crew.heardBy('ruth')).toHaveLength(1);
  });
});
