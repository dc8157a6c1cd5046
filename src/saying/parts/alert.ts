/** Who wrote what, when, and from which truck: to grower and foreman, when somebody is or may be in danger. */
import type { Data, Iso, TellingOf } from '../telling-kind.ts';
import { phrase, time } from '../voice.ts';
import type { Voice } from '../voice.ts';

type Alert = Omit<TellingOf<'emergency' | 'danger-unclear'>, 'tell'>;

export const alertText = (
  key: 'emergency.alert' | 'emergency.unclear',
  { name, truck, atMs, words }: Alert,
  voice: Voice,
): string =>
  phrase(voice, key, {
    name,
    truck: truck === null ? '' : phrase(voice, 'emergency.truck', { truck }),
    time: time(voice, atMs),
    words,
  });

export const alertData = ({ name, truck, words, atMs }: Alert, iso: Iso): Data => ({
  name,
  truck,
  words,
  at: iso(atMs),
});
