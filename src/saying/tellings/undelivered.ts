import { titleOf } from '../parts/headline.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind, TellingOf } from '../telling-kind.ts';
import { personName, phrase } from '../voice.ts';
import type { Voice } from '../voice.ts';

const reason = ({ to, why }: TellingOf<'undelivered'>, voice: Voice): string => {
  if ('room' in to) return phrase(voice, 'undelivered.room', { room: to.room, why: why ?? '' });
  const person = personName(voice, to.person);
  return why === null
    ? phrase(voice, 'undelivered.no-address', { person })
    : phrase(voice, 'undelivered.person', { person, why });
};

/** A stop, or its end, has not reached somebody: foreman and grower must tell them. */
export const undelivered: TellingKind<'undelivered'> = {
  text: (telling, voice) =>
    `${phrase(voice, 'undelivered.head', { title: titleOf(telling.step, voice) })} ${reason(telling, voice)}`,
  data: ({ step, to, why }) => ({ event: step.event, undelivered: to, why }),
  buttons: noButtons,
  rings: ({ rings }) => rings,
  restsOnForecast: never,
  holdsMin: null,
};
