/** A message that may mean danger: the sender is asked, and who does not answer is not left alone. */
import type { FactOf } from '../book/facts.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { personById } from '../roster.ts';
import type { Tell } from '../telling.ts';
import { managersOf, tellAll } from './audiences.ts';

/** The words of the message; null = none of the readings is an emergency. */
export const dangerIn = ({ readings }: FactOf<'reading-offered'>): string | null => {
  const call = readings.flat().find((intent) => intent.do === 'call-emergency');
  return call?.do === 'call-emergency' ? call.words : null;
};

/** Who asked nothing more of it in a minute may be unable to. Grade: chosen. */
export const DANGER_ANSWER_SEC = 60;

/** What grower and foreman are told where that question is still open. */
export const unclearDangerTells = (harvest: Harvest, number: number): Tell[] => {
  const offer = [...harvest.offers.values()].find((open) => open.number === number);
  const person = offer && personById(harvest.roster, offer.person);
  const words = offer === undefined ? null : dangerIn(offer);
  if (offer === undefined || person === undefined || words === null) return [];
  return tellAll(
    managersOf(harvest.roster),
    { tell: 'danger-unclear', name: person.name, words, truck: person.truck, atMs: offer.atMs },
    `danger:${number}`,
    true,
  );
};
