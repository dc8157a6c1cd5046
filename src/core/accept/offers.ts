/** What a message may mean is offered to its sender, who says which reading is meant. */
import { factsHitBy } from './changes.ts';
import { OFFER_HOLDS_MIN } from './assumptions.ts';
import { refused, taken } from './speaking.ts';
import type { Accepted, IntentOf, Speaking } from './speaking.ts';
import type { Fact, FactOf } from '../book/facts.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { withFacts } from '../harvest/fold.ts';
import type { Intent } from '../intent.ts';
import type { PersonId } from '../roster.ts';
import type { OfferedReading } from '../telling.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs } from '../units.ts';

type Offer = FactOf<'reading-offered'>;

/** The question that the person has still to answer. */
export const openOffer = (
  { offers }: Harvest,
  person: PersonId | undefined,
  sentMs: EpochMs,
): Offer | undefined => {
  const offer = person === undefined ? undefined : offers.get(person);
  return offer !== undefined && sentMs <= addMinutes(offer.sentMs, OFFER_HOLDS_MIN) ? offer : undefined;
};

export const acceptChoice = (
  { offer: number, which }: IntentOf<'choose'>,
  harvest: Harvest,
  speaking: Speaking,
): Accepted => {
  const person = speaking.speaker.id;
  const offer = openOffer(harvest, person, speaking.sentMs);
  const isMeant = offer !== undefined && (number === null || number === offer.number);
  if (!isMeant || which > offer.readings.length) return refused({ refused: 'offer-over' });
  return taken(speaking, null, [
    { kind: 'reading-chosen', person, number: offer.number, which: which === 0 ? null : which },
  ]);
};

/** Said when the message was sent, where it names no time: it may be chosen much later. */
export const timed = (intent: Intent, sentMs: EpochMs): Intent =>
  'atMs' in intent && intent.atMs === null ? { ...intent, atMs: sentMs } : intent;

type AcceptOne = (intent: Exclude<Intent, { do: 'ask' }>, harvest: Harvest, speaking: Speaking) => Accepted;

/** What a reading would come to; null = something of it would be refused, so it can hardly be meant. */
export const previewed = (
  intents: readonly Intent[],
  harvest: Harvest,
  speaking: Speaking,
  accept: AcceptOne,
): OfferedReading | null => {
  let [now, facts]: [Harvest, readonly Fact[]] = [harvest, []];
  const changed: Fact[] = [];
  for (const intent of intents) {
    if (intent.do === 'ask') continue;
    const accepted = accept(intent, now, { ...speaking, factsSoFar: facts.length });
    if (accepted.outcome === 'refused') return null;
    const after = withFacts(now, accepted.facts);
    for (const fact of accepted.facts) changed.push(...factsHitBy(fact, now, after));
    [now, facts] = [after, [...facts, ...accepted.facts]];
  }
  return { facts, changed, asks: intents.flatMap((intent) => (intent.do === 'ask' ? intent.question : [])) };
};
