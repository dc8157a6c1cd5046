import type { UnseenNotice } from '../../core/notices/notices.ts';
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

/** Who has not confirmed the newest notice. */
export const unseen: TellingKind<'unseen'> = {
  text: ({ notice }, voice) => unseenText(notice, voice),
  data: ({ notice }) => ({
    event: notice.step?.event ?? null,
    seen: notice.seen,
    unseen: notice.unseen,
  }),
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: null,
};
