import { expect, test } from 'vitest';
import { recordedDatabase, sampleOn, startOn } from '../../support/recorded-day.ts';
import { startSlackFor } from '../../support/slack/bench.ts';
import { ROOM, shownBy, userOf } from '../../support/slack/crew.ts';
import { slackOf } from '../../support/slack/recorded-day.ts';
import { typedTerminal } from '../../support/typed-terminal.ts';
import { waitFor } from '../../support/wait-for.ts';

const database = recordedDatabase();

test(
  'one operation in the terminal and on Slack: one board, and a stop reaches each address once',
  { timeout: 240_000 },
  async () => {
    const inTerminal = (id: string) => ({ platform: 'local', user: id });
    const there = (id: string) => ({ platform: 'slack', user: userOf(id) });
    const sample = sampleOn(
      `both-${crypto.randomUUID()}`,
      { id: 'crew', platform: 'slack', room: ROOM },
      (id) => {
        if (id === 'ruth') return [inTerminal(id), there(id)];
        return id === 'ben' ? [inTerminal(id)] : [there(id)];
      },
    );
    const rooms = [...sample.rooms, { id: 'shop', platform: 'local', room: 'shop' }];
    const roster = { ...sample, rooms };
    const { slack, settings, crew } = await startSlackFor(
      'socket',
      roster.people.map(({ id }) => userOf(id)),
    );
    const terminal = typedTerminal({ roster, nowMs: Date.now });
    const bot = await startOn(database.now(), roster, ['local', 'slack'], (operation) => [
      terminal.chat,
      slackOf(settings, operation),
    ]);
    const say = (who: string, words: string) =>
      slack.send(slack.people.say(crew, userOf(who), words).delivery);

    await say('ana', 'cargado');
    await terminal.type('/as ruth', '/dm', 'where is everybody');
    await terminal.shows('Trucks at');
    expect(terminal.text()).toMatch(/Truck 1 +hauling/);
    await terminal.type('/as ben', '/in shop', 'loaded');
    await say('mateo', 'donde estan todos');
    const boardOnSlack = () => shownBy(slack).find(({ message }) => /Trocas a las? /.test(message.text));
    expect((await waitFor('board', boardOnSlack)).message.text).toMatch(
      /Troca 2: en camino|Troca 2: .*cargad/i,
    );

    await say('mateo', 'stop digging, mud');
    await bot.drained();
    await bot.stop();
    const told = shownBy(slack)
      .filter(({ key }) => key.startsWith('notice:'))
      .map(({ channel }) => channel);
    const onSlackToo = ['ruth', 'mateo', 'fritz', 'gus'].map((id) => slack.workspace.direct(userOf(id)).id);
    expect(told.sort()).toEqual([ROOM, ...onSlackToo].sort());
    // Ruth and the room of the terminal.
    expect(terminal.text().match(/MUD HOLD: /g)).toHaveLength(2);
    await slack.close();
  },
);
