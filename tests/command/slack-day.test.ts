/** The whole bot as a process on a Slack that delivers, forgets and is asked again, killed over and over. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { randomFrom } from '../../src/core/line/model/random.ts';
import { startFieldbell } from '../support/fieldbell.ts';
import { CREW, operationOnSlack, ROOM, shownBy, userOf } from '../support/slack/crew.ts';
import { readManifest } from '../support/slack/manifest.ts';
import { startSlack } from '../support/slack/slack.ts';
import { TOKENS } from '../support/slack/web-api.ts';
import { temporaryDirectory } from '../support/temporary.ts';
import { waitFor } from '../support/wait-for.ts';
import { openStore } from '../../src/store/open.ts';

const KILLS = 10;
/**
 * After so many Web API calls at the latest: sign-in, link, rooms, history twice and an answer to each driver are sure to
 * come, and of these the answers alone in the first life, which has read everything before.
 */
const LATEST_KILL = { first: 5, later: 10 };
const PATIENCE_MS = 240_000;

const DRIVERS = ['Ana', 'Ben', 'Carla', 'Dale', 'Eli'] as const;

/** What each driver says in one life of the bot: a check-in each, and a ticket at the end of the round. */
const wordsOf = (driver: number, life: number): string => {
  const serial = 48_000 + life * 10 + driver;
  return ['loaded', 'in line', 'dumped', `ticket ${serial} gross 79840 tare 29320`][life % 4] ?? '';
};

const startDay = async () => {
  const slack = await startSlack({
    scopes: readManifest().oauth_config.scopes.bot,
    eventsUrl: null,
    // Soon given up: the history must then be read.
    timing: { ackMs: 1_000, retryAfterMs: [0, 50] },
    nowMs: Date.now,
  });
  for (const name of CREW) slack.workspace.users.add(userOf(name));
  const crew = slack.workspace.addChannel(ROOM, 'public');
  const folder = temporaryDirectory();
  const operation = join(folder, 'operation.yaml');
  writeFileSync(operation, operationOnSlack({ Ruth: { local: 'ruth' } }));
  const database = join(folder, 'data');
  const said: { ts: string; words: string }[] = [];
  const say = (name: string, words: string): Promise<void> => {
    const { message, delivery } = slack.people.say(crew, userOf(name), words);
    said.push({ ts: message.ts, words });
    return slack.send(delivery);
  };
  const start = () =>
    startFieldbell([], {
      FIELDBELL_OPERATION: operation,
      FIELDBELL_DATABASE: database,
      FIELDBELL_HEALTH_PORT: '0',
      FIELDBELL_SLACK_BOT_TOKEN: TOKENS.bot,
      FIELDBELL_SLACK_APP_TOKEN: TOKENS.app,
      SLACK_API_URL: slack.url,
    });
  return { slack, crew, database, said, say, start };
};

/** The grower, and those who must act on a stop. */
const CONCERNED = ['Ruth', 'Mateo', 'Fritz', 'Gus'];

test(
  'killed ten times in a day, every check-in counts once and every notice is told once',
  { timeout: 900_000 },
  async () => {
    const chance = randomFrom(20_261_020);
    const { slack, database, said, say, start } = await startDay();
    const underWay: Promise<void>[] = [];
    let bot = start();
    // The room is heard from the first reading of it on, which comes before an answer there.
    const isListed = () => slack.calls.some(({ method }) => method === 'users.conversations');
    await waitFor('list of the rooms', isListed, PATIENCE_MS);
    await say('Ruth', 'board');
    await waitFor('board', () => shownBy(slack).length === 1, PATIENCE_MS);
    for (let life = 0; life < KILLS; life += 1) {
      const before = slack.calls.length;
      for (const [driver, name] of DRIVERS.entries()) underWay.push(say(name, wordsOf(driver, life)));
      if (life === 3) underWay.push(say('Mateo', 'stop digging, mud'));
      if (life === 6) underWay.push(say('Mateo', 'dig again'));
      const latest = life === 0 ? LATEST_KILL.first : LATEST_KILL.later;
      const target = before + 1 + Math.floor(chance() * latest);
      await waitFor(`call ${target}`, () => slack.calls.length >= target, PATIENCE_MS);
      await bot.kill();
      bot = start();
    }
    await Promise.all(underWay);

    const answered = (ts: string): boolean =>
      shownBy(slack).some(({ key }) => key.startsWith(`slack:${ROOM}:${ts}:answer`));
    // Orders have no other answer than the notice.
    const answerable = said.filter(({ words }) => !words.includes('dig'));
    await waitFor('answer to each', () => answerable.every(({ ts }) => answered(ts)), PATIENCE_MS);
    const notices = () => shownBy(slack).filter(({ key }) => key.startsWith('notice:'));
    await waitFor('notices', () => notices().length >= 2 * (CONCERNED.length + 1), PATIENCE_MS);
    // The board rests between two changes; its last one takes the stop off it again.
    const boards = () => shownBy(slack).filter(({ message }) => message.text.startsWith('Trucks at'));
    await waitFor('board without the stop', () => boards().length > 0, PATIENCE_MS);
    bot.type('/as ruth', '/dm', 'where is everybody');
    const { code, out } = await bot.end();
    expect(code).toBe(0);
    // Said on Slack, asked for in the terminal. Two tickets each; what else is said in a minute is of the same load.
    for (const truck of [1, 2, 3, 4, 5]) expect(out).toMatch(new RegExp(`Truck ${truck} .* 2\\b`));

    const keys = shownBy(slack).map(({ key }) => key);
    expect(keys.length).toBe(new Set(keys).size);
    const where = (number: number): string[] =>
      notices()
        .filter(({ key }) => key.includes(`:${number}:{"`))
        .map(({ channel }) => channel);
    const concerned = [ROOM, ...CONCERNED.map((name) => slack.workspace.direct(userOf(name)).id)].sort();
    for (const number of [1, 2]) expect(where(number).sort()).toEqual(concerned);
    expect(boards()).toHaveLength(1);

    const store = await openStore({ embedded: database }, ['sample']);
    const facts = await store.book.inOneGo('sample', (page) => page.factsAfter(0));
    await store.close();
    const causes = facts.map(({ fact }) => fact.cause).sort();
    const reports = said.filter(({ words }) => words !== 'board');
    expect(causes).toEqual(reports.map(({ ts }) => `slack:${ROOM}:${ts}`).sort());
    await slack.close();
  },
);
