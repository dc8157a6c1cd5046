/** A message is changed, taken back, or pointed at by a reply. */
import { withFacts } from '../../core/harvest/fold.ts';
import { bySending } from '../../core/book/entries.ts';
import type { Entry } from '../../core/book/entries.ts';
import { isTold, standingEntryOf } from '../../core/book/standing.ts';
import type { Fact } from '../../core/book/facts.ts';
import type { Reading } from '../../core/intent.ts';
import type { CrewMember } from '../../core/roster.ts';
import type { EpochMs } from '../../core/units.ts';
import type { Heard } from '../../ports/chat.ts';
import { causeOf } from './cause.ts';
import { headerOf, readOn, speakingOf } from './speech.ts';
import type { Incoming, Versions } from './speech.ts';
import { nothing, understand } from '../../core/turn.ts';
import type { Understood } from '../../core/turn.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';

const standingEntry = (harvest: Harvest, versions: Versions): Entry | undefined => {
  const causes = versions.map(causeOf);
  const entries = [...new Set(causes)].flatMap((cause) => standingEntryOf(harvest.standing, cause) ?? []);
  return entries.sort(bySending).at(-1);
};

/** A reply that says "undo" or corrects means the message that it replies to, not the newest. */
export const aimedAt = (reading: Reading, repliedTo: Versions, harvest: Harvest): Reading => {
  if (reading.found !== 'intents') return reading;
  const causes = repliedTo.map(causeOf);
  const cause =
    standingEntry(harvest, repliedTo)?.cause ?? causes.find((known) => isTold(harvest.standing, known));
  if (cause === undefined) return reading;
  const intents = reading.intents.map((intent) =>
    (intent.do === 'withdraw' || intent.do === 'correct') && intent.target.by === 'latest'
      ? { ...intent, target: { by: 'message' as const, cause } }
      : intent,
  );
  return { found: 'intents', intents };
};

const isOwn = (heard: Heard, versions: Versions): boolean =>
  versions.every((version) => version.user === heard.user);

/**
 * Takes the message and its edits back. The message itself always, though it brought nothing or was not heard yet:
 * should it come late, it is taken back already.
 */
const withdrawals = (
  heard: Heard,
  of: string,
  versions: Versions,
  speaker: CrewMember,
  sentMs: EpochMs,
): Fact[] =>
  [...new Set([of, ...versions.map((version) => version.id)])].map((id, at) => ({
    ...headerOf(heard, speaker.id, sentMs, at),
    kind: 'entry-withdrawn',
    target: { by: 'message', cause: causeOf({ platform: heard.platform, id }) },
  }));

const wordsOf = (heard: Heard | undefined): string | null =>
  heard === undefined || heard.event.is === 'deletion' ? null : heard.event.text;

const wasAddressed = (heard: Heard | undefined): boolean =>
  heard?.event.is === 'message' && heard.event.addressed;

/** The sender changed a message: what it said is replaced, at the time it was first sent. Unreadable: the first stands. */
export const hearEdit = (
  { heard, versions, harvest, means }: Incoming,
  event: Extract<Heard['event'], { is: 'edit' }>,
  speaker: CrewMember,
): Understood => {
  const { text: said } = event;
  if (!isOwn(heard, versions) || said === wordsOf(versions.at(-1))) return nothing(harvest);
  const standing = standingEntry(harvest, versions)?.facts ?? [];
  const sentMs = versions[0]?.sentMs ?? heard.sentMs;
  const undo = withdrawals(heard, event.of, versions, speaker, sentMs);
  const without = withFacts(harvest, undo);
  const addressed = heard.room === null || wasAddressed(versions[0]);
  const reading = readOn(without, means, { text: said, speaker, sentMs, addressed });
  // What may only be meant does not replace what was said.
  if (reading.found === 'likely' && standing.length > 0)
    return { facts: [], replies: [{ say: { tell: 'edit-unread', facts: standing } }], harvest };
  const speaking = { ...speakingOf(heard, speaker), sentMs, factsSoFar: undo.length };
  const understood = understand(reading, { said, speaking, harvest: without, clock: means.clock, addressed });
  if (understood.facts.length > 0) return { ...understood, facts: [...undo, ...understood.facts] };
  if (standing.length === 0) return { ...understood, harvest };
  return { facts: [], replies: [{ say: { tell: 'edit-unread', facts: standing } }], harvest };
};

/** The sender took a message back. */
export const hearDeletion = (
  { heard, versions, harvest }: Incoming,
  of: string,
  speaker: CrewMember,
): Understood => {
  const standing = standingEntry(harvest, versions)?.facts ?? [];
  const changes = versions.length === 0 || standing.length > 0;
  if (!isOwn(heard, versions) || !changes) return nothing(harvest);
  const facts = withdrawals(heard, of, versions, speaker, heard.sentMs);
  return {
    facts,
    replies: standing.length > 0 ? [{ say: { tell: 'taken-back', facts: standing } }] : [],
    harvest: withFacts(harvest, facts),
  };
};
