/** One line through the real hearing: over a real store, into an operation of its own. */
import { and, eq, like } from 'drizzle-orm';
import { operateOn } from '../../../src/command/operate.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import type { Heard } from '../../../src/ports/chat.ts';
import { causeOf } from '../../../src/run/in/cause.ts';
import { hear } from '../../../src/run/in/hear.ts';
import type { Database } from '../../../src/store/database.ts';
import { storeOver } from '../../../src/store/open.ts';
import { outbox } from '../../../src/store/schema.ts';
import type { Line } from '../training/corpus.ts';
import { factsBefore } from './before.ts';
import type { Crew } from './crew.ts';
import { senderOf } from './crew.ts';
import { sceneOf } from './scene.ts';
import type { Scene } from './scene.ts';

/** In the crew's room, where the bot only overhears, or to the bot alone. */
export type Place = 'room' | 'alone';
export const PLACES: readonly Place[] = ['room', 'alone'];

/** What goes back to the sender: the kind of telling, and its data as the outbox has them. */
export interface BotReply {
  kind: string;
  data: unknown;
}

export interface Played {
  scene: Scene;
  place: Place;
  /** What the line itself brought into the book. */
  facts: readonly Fact[];
  replies: readonly BotReply[];
}

const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };
const MEANS = { platforms: ['local'], log: quiet, wakeDeliverer: () => undefined };

const heardAs = (line: Line, id: string, place: Place, atMs: number): Heard => ({
  platform: 'local',
  id,
  user: senderOf(line),
  userName: null,
  room: place === 'room' ? 'crew' : null,
  sentMs: atMs,
  heardMs: atMs,
  event: { is: 'message', text: line.text, addressed: false, repliesTo: null },
});

let operations = 0;

/**
 * `before`: the room's messages just before, in a chat log. They only lie in the inbox, where the hearing may look them
 * up; what they brought about is told by the line's `state`.
 */
export const play = async (
  database: Database,
  line: Line,
  crew: Crew,
  place: Place,
  before: readonly Line[] = [],
): Promise<Played> => {
  operations += 1;
  const scene = sceneOf(line, crew, `scene-${operations}`);
  const { operation } = scene.roster;
  const store = await storeOver(database, [operation]);
  await store.book.inOneGo(operation, async (page) => {
    for (const [i, said] of before.entries())
      await page.receive(heardAs(said, `before-${i}`, 'room', scene.nowMs - (before.length - i) * 60_000));
    await page.write(factsBefore(scene));
  });
  const { bot } = await operateOn(store, scene.roster, MEANS);
  const { seq } = bot.known;
  const heard = heardAs(line, 'line', place, scene.nowMs);
  const { answered } = await hear(bot, heard);
  await answered;
  const cause = causeOf(heard);
  const facts = await store.book.inOneGo(operation, (page) => page.factsAfter(seq));
  const replies = await database.db
    .select({ kind: outbox.kind, data: outbox.data })
    .from(outbox)
    .where(and(eq(outbox.operation, operation), like(outbox.key, `${cause}:answer:%`)))
    .orderBy(outbox.id);
  return {
    scene,
    place,
    facts: facts.map(({ fact }) => fact).filter((fact) => fact.cause === cause),
    replies,
  };
};
