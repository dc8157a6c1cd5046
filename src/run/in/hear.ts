/** A message comes in: inbox, reading, facts and answers, all in one transaction. */
import { withFacts } from '../../core/harvest/fold.ts';
import { tellsOf } from '../../core/notices/tells.ts';
import type { Fact } from '../../core/book/facts.ts';
import { personAt, roomAt } from '../../core/roster.ts';
import type { CrewMember } from '../../core/roster.ts';
import type { Tell, Telling } from '../../core/telling.ts';
import type { Page } from '../../ports/book.ts';
import type { Heard } from '../../ports/chat.ts';
import { boardChanges } from '../out/boards.ts';
import { aimedAt, hearDeletion, hearEdit } from './edits.ts';
import type { Versions } from './edits.ts';
import { withWaitForecasts } from '../line/service.ts';
import { wakeForLine } from '../time/line-look.ts';
import { outgoing } from '../out/outgoing.ts';
import type { Origin } from '../out/outgoing.ts';
import { shareTickets, withSharedTickets } from '../line/shared-tickets.ts';
import { harvestOn, remember } from '../host/operation.ts';
import type { Running, Understanding } from '../host/operation.ts';
import { causeOf, readOn, speakingOf } from './speech.ts';
import { hearStranger } from './strangers.ts';
import { nothing, understand } from '../../core/turn.ts';
import type { Understood } from '../../core/turn.ts';
import { bearsOnWeather, lookAtWeatherNow } from '../time/tick.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';

/**
 * The message that this one changes, takes back or replies to, with its edits, but for this one. A reply to a receipt
 * means what the receipt is for.
 */
const pointedAt = async ({ platform, id, event }: Heard, page: Page): Promise<Versions> => {
  const of = event.is === 'message' ? event.repliesTo : event.of;
  const known = of === null ? [] : await page.versionsOf(platform, of);
  const answered = of === null || known.length > 0 ? null : await page.answeredBy(platform, of);
  const versions = answered === null ? known : await page.versionsOf(platform, answered);
  return versions.filter((version) => version.id !== id);
};

const hearMessage = (
  heard: Heard,
  event: Extract<Heard['event'], { is: 'message' }>,
  repliedTo: Versions,
  harvest: Harvest,
  running: Understanding,
  speaker: CrewMember,
): Understood => {
  const { text } = event;
  const addressed = event.addressed || heard.room === null;
  const reading = readOn(harvest, running, { text, speaker, sentMs: heard.sentMs, addressed });
  const aimed = aimedAt(reading, repliedTo, harvest);
  return understand(aimed, text, harvest, speakingOf(heard, speaker), running, addressed);
};

const understandHeard = (
  heard: Heard,
  versions: Versions,
  harvest: Harvest,
  running: Understanding,
  speaker: CrewMember | undefined,
): Understood => {
  if (!speaker) return hearStranger(heard, harvest, running);
  switch (heard.event.is) {
    case 'message':
      return hearMessage(heard, heard.event, versions, harvest, running, speaker);
    case 'edit':
      return hearEdit(heard, heard.event, versions, harvest, running, speaker);
    case 'deletion':
      return hearDeletion(heard, heard.event.of, versions, harvest, speaker);
  }
};

const isAboutRooms = (telling: Telling): boolean =>
  (telling.tell === 'list-changed' && telling.change.list === 'rooms') ||
  (telling.tell === 'refusal' && telling.refusal.refused === 'room-not-used');

const countsElsewhere = (fact: Fact): boolean =>
  fact.kind === 'emergency-called' || (fact.kind === 'list-changed' && fact.change.list === 'rooms');

/**
 * In a room that is not the crew's, only emergencies count, and a manager's word that makes it one: nothing else of the
 * operation is said or taken there.
 */
const heardElsewhere = (understood: Understood, before: Harvest): Understood => {
  const facts = understood.facts.filter(countsElsewhere);
  const answers = understood.answers.filter(
    (telling) => telling.tell === 'emergency-answer' || isAboutRooms(telling),
  );
  if (facts.length + answers.length === 0) return nothing(before);
  return { facts, answers, harvest: withFacts(before, facts) };
};

const answerTells = (answers: readonly Telling[], cause: string): Tell[] =>
  answers.map((telling, at) => ({
    audience: { to: 'asker' },
    telling,
    urgent: telling.tell === 'emergency-answer',
    key: `${cause}:answer:${at}`,
  }));

/** What a message has left behind; `seq` is that of its last fact. */
interface TakenIn {
  facts: readonly Fact[];
  seq: number | null;
  harvest: Harvest;
  queues: boolean;
}

const takeIn = async (heard: Heard, page: Page, running: Running): Promise<TakenIn> => {
  const before = await withSharedTickets(running, page, await harvestOn(running, page), heard.heardMs);
  const speaker = personAt(before.roster, heard.platform, heard.user);
  const room = heard.room === null ? null : roomAt(before.roster, heard.platform, heard.room);
  const versions = await pointedAt(heard, page);
  const anywhere = await withWaitForecasts(running, before, heard.heardMs, (forecastWait) =>
    understandHeard(heard, versions, before, { ...running, forecastWait }, speaker),
  );
  const understood = room === undefined ? heardElsewhere(anywhere, before) : anywhere;
  const { facts: news, answers, harvest } = understood;
  const cause = causeOf(heard.platform, heard.id);
  const origin: Origin = {
    platform: heard.platform,
    room: heard.room === null ? null : { id: room?.id ?? heard.room, room: heard.room },
    user: heard.user,
    person: (speaker && harvest.roster.people.find((person) => person.id === speaker.id)) ?? null,
    messageId: heard.id,
  };
  const tells = [
    ...answerTells(answers, cause),
    ...news.flatMap((fact) => tellsOf(fact, harvest, running.clock)),
  ];
  const messages = outgoing(tells, cause, origin, harvest, running, heard.heardMs);
  const turn = { before, after: harvest, cause, nowMs: heard.heardMs, messages };
  const boards = await boardChanges(page, running, turn);
  const seq = news.length > 0 ? await page.write(news) : null;
  await shareTickets(running, page, turn);
  await page.enqueue([...messages, ...boards]);
  const stirs = news.some(bearsOnWeather);
  await wakeForLine(page, news, heard.heardMs);
  if (stirs) await lookAtWeatherNow(page, running, heard.heardMs, harvest);
  return { facts: news, seq, harvest, queues: stirs || messages.length + boards.length > 0 };
};

/**
 * Takes a message in. When it resolves, the message and all that follows from it are safe: only then may the platform
 * be told that it has been received. A message that comes twice changes nothing the second time.
 */
export const hear = async (running: Running, said: Heard): Promise<void> => {
  const { metrics, roster } = running;
  // The sender's clock, or that of his server, may be fast; nothing was said later than it was heard.
  const heard = { ...said, sentMs: Math.min(said.sentMs, said.heardMs) };
  const { platform } = heard;
  metrics.heard.inc({ platform });
  const isSafe = metrics.handleSeconds.startTimer({ platform });
  const inOneGo = (): Promise<TakenIn | null> =>
    running.book.inOneGo(roster.operation, async (page) =>
      (await page.receive(heard)) === 'known' ? null : takeIn(heard, page, running),
    );
  try {
    // A connection that broke, a deadlock: what passes is gone at the second try, a fault of ours is not.
    const takenIn = await inOneGo().catch(inOneGo);
    if (takenIn) settle(running, takenIn);
  } catch (error) {
    await keepUnhandled(running, heard, error);
  }
  isSafe();
};

/** What follows once it is safe. */
const settle = (running: Running, { facts, seq, harvest, queues }: TakenIn): void => {
  if (seq !== null) remember(running, seq, harvest);
  for (const { kind } of facts) running.metrics.facts.inc({ kind });
  if (queues) running.wakeDeliverer();
};

/** A fault of ours must not lose the message, nor let the platform send it for ever: it is kept with the reason. */
const keepUnhandled = async (running: Running, heard: Heard, error: unknown): Promise<void> => {
  const why = error instanceof Error ? (error.stack ?? error.message) : String(error);
  const reference = `${heard.platform}:${heard.id}`.slice(-12);
  await running.book.inOneGo(running.roster.operation, (page) => page.park(heard, why));
  running.log.error(
    { why, reference, message: heard.id },
    'A message could not be handled; it is kept in the inbox',
  );
  try {
    await ownUp(running, heard, reference);
  } catch (again) {
    running.log.error({ why: String(again), reference }, 'The sender could not be told of it');
  }
};

/** Tells the sender, if it is one of the crew, that something went wrong. */
const ownUp = async (running: Running, heard: Heard, reference: string): Promise<void> => {
  const { platform, user, id: messageId } = heard;
  const cause = causeOf(platform, messageId);
  const tell: Tell = {
    audience: { to: 'asker' },
    telling: { tell: 'trouble', reference },
    urgent: false,
    key: `${cause}:trouble`,
  };
  await running.book.inOneGo(running.roster.operation, async (page) => {
    const harvest = await harvestOn(running, page);
    const person = personAt(harvest.roster, platform, user);
    if (!person) return;
    const origin: Origin = { platform, room: null, user, person, messageId };
    await page.enqueue(outgoing([tell], cause, origin, harvest, running, heard.heardMs));
  });
  running.wakeDeliverer();
};
