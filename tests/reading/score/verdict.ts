/** What came of one line in one place. */
import { z } from 'zod';
import { actOfLabel, actsOfIntent, clockTime } from './acts.ts';
import type { Act } from './acts.ts';
import { compare, isPart, isRight } from './compare.ts';
import type { Comparison } from './compare.ts';
import { harmsOf } from './harm.ts';
import type { Harm } from './harm.ts';
import type { BotReply, Played } from './play.ts';
import { offeredReadings, takenAs } from './recorded.ts';
import { completes, harmsIn, isNotUnderstood } from './replies.ts';
import type { Scene } from './scene.ts';
import { fairReadings, settled } from './settle.ts';

/**
 * Of lines that mean something. `leftAlone`: which is fair too, by the label. `part`: of several acts some were recorded,
 * and nothing else. `aside`: something came back that neither records nor completes it.
 */
export const MEANING = [
  'right',
  'leftAlone',
  'offered',
  'asked',
  'part',
  'aside',
  'notUnderstood',
  'silent',
  'wrong',
] as const;
/** Of talk. `asked`: where a human would ask back too. `offered`: the sender alone is asked what it means. */
export const TALK = ['leftAlone', 'asked', 'offered', 'notUnderstood', 'falseAnswer', 'wrong'] as const;
export type Outcome = (typeof MEANING)[number] | (typeof TALK)[number];

export interface Verdict {
  outcome: Outcome;
  harms: readonly Harm[];
  /** Whether an emergency was called. */
  alarmed: boolean;
  /** Whether the sender is asked if somebody is hurt. */
  asksOfDanger: boolean;
  read: readonly Act[];
  meant: readonly Act[];
}

const MOST_TAPS = 3;

const offer = z.object({ danger: z.boolean() });
const isAskOfDanger = ({ kind, data }: BotReply): boolean => kind === 'offer' && offer.parse(data).danger;

/** The comparison that is kindest to what was read. */
const kindest = (read: readonly Act[], fair: readonly Act[][], played: Played): Comparison => {
  const all = fair.map((meant) => compare(read, meant, played.scene));
  const [first = compare(read, [], played.scene)] = all;
  return all.find(isRight) ?? all.find(isPart) ?? first;
};

/** What is taken later is written as of the time of sending, which says no more than no time. */
const sentNow = (acts: readonly Act[], scene: Scene): Act[] =>
  acts.map(({ act, slots: { time, ...slots } }) => {
    const isNow = time === undefined || time === clockTime(scene, scene.nowMs);
    return { act, slots: isNow ? slots : { ...slots, time } };
  });

/** Nothing was recorded and no question answered. */
const unanswered = (played: Played, fair: readonly Act[][]): Outcome => {
  const { replies, scene } = played;
  const meant = fair[0] ?? [];
  const offers = offeredReadings(played).slice(0, MOST_TAPS);
  const isOffered = offers.some((intents) => {
    const acts = intents.flatMap((intent) => actsOfIntent(intent, scene));
    const read = settled(sentNow(acts, scene), scene);
    return fair.some((one) => isRight(compare(read, one, scene)));
  });
  if (isOffered) return 'offered';
  const [reply] = replies;
  if (reply === undefined) return fair.some((one) => one.length === 0) ? 'leftAlone' : 'silent';
  if (isNotUnderstood(reply)) return 'notUnderstood';
  return replies.some((one) => completes(one, meant, scene)) ? 'asked' : 'aside';
};

const ofMeaning = (
  played: Played,
  read: readonly Act[],
  fair: readonly Act[][],
  found: Comparison,
): Outcome => {
  if (read.length === 0) return unanswered(played, fair);
  if (isRight(found)) return 'right';
  return isPart(found) ? 'part' : 'wrong';
};

const ofTalk = ({ scene, replies }: Played, read: readonly Act[], found: Comparison): Outcome => {
  if (read.length > 0 && isRight(found)) return 'leftAlone';
  if (read.length > 0)
    return replies.length > 0 && read.every(({ act }) => isAnswer(act)) ? 'falseAnswer' : 'wrong';
  const [reply] = replies;
  if (reply === undefined) return 'leftAlone';
  if (isNotUnderstood(reply)) return 'notUnderstood';
  if (reply.kind === 'offer') return 'offered';
  return scene.line.kind === 'unclear' && reply.kind === 'question' ? 'asked' : 'falseAnswer';
};

const isAnswer = (act: string): boolean => /^(ask_|help)/.test(act);

export const verdictOn = (played: Played): Verdict => {
  const { scene, replies } = played;
  const { line } = scene;
  const fair = [line.acts, ...line.also].flatMap((acts) =>
    fairReadings(
      acts.flatMap((act) => actOfLabel(act, scene)),
      scene,
    ),
  );
  const read = settled(
    takenAs(played).flatMap((intent) => actsOfIntent(intent, scene)),
    scene,
  );
  const found = kindest(read, fair, played);
  const isMeaning = line.acts.length > 0;
  const outcome = isMeaning ? ofMeaning(played, read, fair, found) : ofTalk(played, read, found);
  const harms = [...harmsOf(found, scene), ...replies.flatMap((reply) => harmsIn(reply, fair))];
  return {
    outcome: harms.length > 0 ? 'wrong' : outcome,
    harms: [...new Set(harms)],
    alarmed: played.facts.some(({ kind }) => kind === 'emergency-called'),
    asksOfDanger: replies.some(isAskOfDanger),
    read,
    meant: fair[0] ?? [],
  };
};
