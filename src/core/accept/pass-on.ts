import type { Harvest } from '../harvest/harvest.ts';
import { mayManage, roomAt } from '../roster.ts';
import { refused, taken } from './speaking.ts';
import type { Accepted, IntentOf, Speaking } from './speaking.ts';

/** Words for others, by foreman and grower only. Nobody is told what he has said himself. */
export const acceptPassOn = (
  { to, words, soundsLikeOrder }: IntentOf<'pass-on'>,
  { roster }: Harvest,
  speaking: Speaking,
): Accepted => {
  const { speaker, place } = speaking;
  if (!mayManage(speaker)) return refused({ refused: 'not-allowed', what: 'pass-on' });
  const toAll = to === 'everybody';
  const people = toAll ? roster.people.map(({ id }) => id) : [...new Set(to)];
  return taken(speaking, null, [
    {
      kind: 'words-passed',
      to: people.filter((id) => id !== speaker.id),
      toAll,
      words,
      room: place.room === null ? null : (roomAt(roster, place.platform, place.room)?.id ?? null),
      soundsLikeOrder,
    },
  ]);
};
