import type { UnseenNotice } from '../../core/notices/notices.ts';
import type { PersonId } from '../../core/roster.ts';
import { titleOf } from '../parts/headline.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { personName, phrase } from '../voice.ts';
import type { Voice } from '../voice.ts';

const unseenText = ({ step, seen, unseen: missing }: UnseenNotice, voice: Voice): string => {
  if (!step) return phrase(voice, 'unseen.none');
  if (missing.length === 0) return phrase(voice, 'unseen.all');
  const names = missing.map((person) => personName(voice, person)).join(', ');
  const all = seen.length + missing.length;
  return phrase(voice, 'unseen.some', { title: titleOf(step, voice), names, seen: seen.length, all });
};

const notReached = (people: readonly PersonId[], voice: Voice): string[] =>
  people.length === 0
    ? []
    : [
        phrase(voice, 'unseen.undelivered', {
          names: people.map((person) => personName(voice, person)).join(', '),
        }),
      ];

/** Who has not confirmed the newest notice, and whom it has not reached. */
export const unseen: TellingKind<'unseen'> = {
  text: ({ notice, undelivered }, voice) =>
    [unseenText(notice, voice), ...notReached(undelivered, voice)].join('\n'),
  data: ({ notice, undelivered }) => ({
    event: notice.step?.event ?? null,
    seen: notice.seen,
    unseen: notice.unseen,
    undelivered,
  }),
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: null,
};
