/**
 * A message comes in: inbox, reading, facts, receipts and notices, all in one transaction. Answers that need a forecast
 * follow in one of their own (answer-later.ts).
 */
import type { Harvest } from '../../core/harvest/harvest.ts';
import { nextAnswerTells } from '../../core/notices/notice-tells.ts';
import { tellsOf } from '../../core/notices/tells.ts';
import { stirsWeather } from '../../core/book/kinds.ts';
import type { Fact } from '../../core/book/facts.ts';
import { personAt, roomAt } from '../../core/roster.ts';
import type { CrewMember } from '../../core/roster.ts';
import { onlyElsewhere, understand } from '../../core/turn.ts';
import type { Reply, Understood } from '../../core/turn.ts';
import type { Audience, Tell, Telling } from '../../core/telling.ts';
import type { MessagePlace, OwedAnswer, Page } from '../../ports/book.ts';
import type { Heard } from '../../ports/chat.ts';
import { harvestOn, remember } from '../host/bot.ts';
import type { Bot } from '../host/bot.ts';
import { shareTickets, withSharedTickets } from '../line/shared-tickets.ts';
import { outgoing } from '../out/outgoing.ts';
import { shownChanges } from '../out/shown-changes.ts';
import { withReach } from '../out/undelivered.ts';
import { wakeForDanger } from '../time/danger-look.ts';
import { wakeForLine } from '../time/line-look.ts';
import { lookAtWeather } from '../time/weather-look.ts';
import { giveAnswers } from './answer-later.ts';
import { causeOf } from './cause.ts';
import { aimedAt, hearDeletion, hearEdit } from './edits.ts';
import { keepUnhandled } from './park.ts';
import { readOn, speakingOf } from './speech.ts';
import type { Incoming, Versions } from './speech.ts';
import { hearStranger } from './strangers.ts';

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
  { heard, versions, harvest, means }: Incoming,
  event: Extract<Heard['event'], { is: 'message' }>,
  speaker: CrewMember,
): Understood => {
  const { text: said } = event;
  const addressed = event.addressed || heard.room === null;
  const reading = readOn(harvest, means, { text: said, speaker, sentMs: heard.sentMs, addressed });
  const aimed = aimedAt(reading, versions, harvest);
  return understand(aimed, {
    said,
    speaking: speakingOf(heard, speaker),
    harvest,
    clock: means.clock,
    addressed,
  });
};

const understandHeard = (incoming: Incoming, speaker: CrewMember | undefined): Understood => {
  const { event } = incoming.heard;
  if (!speaker) return hearStranger(incoming);
  switch (event.is) {
    case 'message':
      return hearMessage(incoming, event, speaker);
    case 'edit':
      return hearEdit(incoming, event, speaker);
    case 'deletion':
      return hearDeletion(incoming, event.of, speaker);
  }
};

/** Goes before everything else. */
const isUrgent = (say: Telling): boolean =>
  say.tell === 'emergency-answer' || (say.tell === 'offer' && say.danger);

const keyOf = (cause: string, at: number): string => `${cause}:answer:${at}`;

/** What a message may have meant is asked of its sender alone: a room is not for that, unless somebody may be hurt. */
const audienceOf = (say: Telling, { room }: Heard, speaker: CrewMember | undefined): Audience =>
  say.tell === 'offer' && !say.danger && room !== null && speaker
    ? { to: 'person', person: speaker.id }
    : { to: 'asker' };

const repliesAsTells = (replies: readonly Reply[], heard: Heard, speaker: CrewMember | undefined): Tell[] =>
  replies.flatMap((reply, at) => {
    if ('owe' in reply) return [];
    const { say } = reply;
    // The notice in the room says who has seen it.
    if (say.tell === 'seen' && heard.room !== null) return [];
    return [
      {
        audience: audienceOf(say, heard, speaker),
        telling: say,
        urgent: isUrgent(say),
        key: keyOf(causeOf(heard), at),
      },
    ];
  });

/** Their answers name every stop. */
const TELL_STOPS: readonly Telling['tell'][] = ['may-dig', 'board', 'unseen'];

/** Whoever writes to the bot alone gets the orders that were given to the room; a call for help comes first. */
const ordersBeside = (
  { facts, replies, harvest }: Understood,
  { room, heardMs }: Heard,
  speaker: CrewMember | null,
  { clock }: Bot,
): Tell[] => {
  const isTalk = facts.length + replies.length === 0;
  const isEmergency = facts.some(({ kind }) => kind === 'emergency-called');
  const isAnswered = replies.some((reply) => 'say' in reply && TELL_STOPS.includes(reply.say.tell));
  return speaker === null || room !== null || isTalk || isEmergency || isAnswered
    ? []
    : nextAnswerTells(speaker, harvest, clock, heardMs);
};

const owedOf = (
  replies: readonly Reply[],
  { heardMs, ...heard }: Heard,
  speaker: CrewMember | undefined,
  place: MessagePlace,
): OwedAnswer[] =>
  replies.flatMap((reply, at) => {
    if ('say' in reply || !speaker) return [];
    const cause = causeOf(heard);
    return [{ key: keyOf(cause, at), cause, question: reply.owe, asker: speaker.id, heardMs, place }];
  });

/** What a message has left behind; `seq` is that of its last fact. */
interface TakenIn {
  facts: readonly Fact[];
  seq: number | null;
  harvest: Harvest;
  owed: readonly OwedAnswer[];
  unread: 'nothing' | 'asked' | null;
  queues: boolean;
}

/** What the sender was told of a message that was not read: that nothing was made of it, or a question what was meant. */
const unreadBy = (replies: readonly Reply[]): TakenIn['unread'] => {
  const tells = replies.flatMap((reply) => ('say' in reply ? [reply.say] : []));
  const isNothing = tells.some((say) => say.tell === 'question' && say.problem.problem === 'not-understood');
  if (isNothing) return 'nothing';
  return tells.some(({ tell }) => tell === 'offer') ? 'asked' : null;
};

const takeIn = async (heard: Heard, page: Page, bot: Bot): Promise<TakenIn> => {
  const { heardMs: nowMs, platform, user, id: messageId } = heard;
  const before = await withSharedTickets(bot, page, await harvestOn(page, bot), nowMs);
  const speaker = personAt(before.roster, platform, user);
  const room = heard.room === null ? null : roomAt(before.roster, platform, heard.room);
  const versions = await pointedAt(heard, page);
  const anywhere = understandHeard({ heard, versions, harvest: before, means: bot }, speaker);
  const understood = room === undefined ? onlyElsewhere(anywhere, before) : anywhere;
  const { facts: news, replies, harvest } = understood;
  const cause = causeOf(heard);
  const ours = heard.room === null ? null : { id: room?.id ?? heard.room, room: heard.room };
  const place: MessagePlace = { platform, room: ours, user, messageId };
  const person = (speaker && harvest.roster.people.find(({ id }) => id === speaker.id)) ?? null;
  const tells = [
    ...repliesAsTells(replies, heard, speaker),
    ...news.flatMap((fact) => tellsOf(fact, harvest, bot.clock)),
    ...ordersBeside(understood, heard, person, bot),
  ];
  const messages = outgoing(
    await withReach(page, bot, harvest.roster, tells),
    { cause, origin: { ...place, person }, harvest, nowMs },
    bot,
  );
  const change = { before, after: harvest, cause, nowMs, messages };
  const boards = await shownChanges(page, bot, change);
  const owed = owedOf(replies, heard, speaker, place);
  const seq = news.length > 0 ? await page.write(news) : null;
  await shareTickets(bot, page, change);
  await page.enqueue([...messages, ...boards]);
  await page.owe(owed);
  const stirs = news.some(stirsWeather);
  await wakeForLine(page, news, nowMs);
  await wakeForDanger(page, news, nowMs);
  if (stirs) await lookAtWeather(page, bot, harvest, nowMs);
  const unread = unreadBy(replies);
  return { facts: news, seq, harvest, owed, unread, queues: stirs || messages.length + boards.length > 0 };
};

/** What follows once it is safe. */
const settle = (bot: Bot, platform: string, { facts, seq, harvest, unread, queues }: TakenIn): void => {
  if (seq !== null) remember(bot, seq, harvest);
  for (const { kind } of facts) bot.metrics.facts.inc({ kind });
  if (unread !== null) bot.metrics.unread.inc({ platform, outcome: unread });
  if (queues) bot.wakeDeliverer();
};

/**
 * Takes a message in. When it resolves, the message and all that follows from it are safe: only then may the platform
 * be told that it has been received. A message that comes twice changes nothing the second time. `answered` resolves
 * when the answers that need a forecast have been given too; no other message waits for them.
 */
export const hear = async (bot: Bot, said: Heard): Promise<{ answered: Promise<void> }> => {
  const { metrics, roster } = bot;
  // The sender's clock, or that of his server, may be fast; nothing was said later than it was heard.
  const heard = { ...said, sentMs: Math.min(said.sentMs, said.heardMs) };
  const { platform } = heard;
  metrics.heard.inc({ platform });
  const isSafe = metrics.handleSeconds.startTimer({ platform });
  const inOneGo = (): Promise<TakenIn | null> =>
    bot.book.inOneGo(roster.operation, async (page) =>
      (await page.receive(heard)) === 'known' ? null : takeIn(heard, page, bot),
    );
  try {
    // A connection that broke, a deadlock: what passes is gone at the second try, a fault of ours is not.
    const takenIn = await inOneGo().catch(inOneGo);
    if (takenIn === null) return { answered: Promise.resolve() };
    settle(bot, platform, takenIn);
    return { answered: giveAnswers(bot, takenIn.owed, takenIn.harvest) };
  } catch (error) {
    await keepUnhandled(bot, heard, error);
    return { answered: Promise.resolve() };
  } finally {
    isSafe();
  }
};
