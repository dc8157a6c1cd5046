import { never, noButtons, noData } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase, ticketExamples } from '../voice.ts';

export const help: TellingKind<'help'> = {
  text: ({ manager }, voice) =>
    [
      phrase(voice, 'help', ticketExamples(voice)),
      phrase(voice, 'help.tons', { units: voice.roster.units }),
      ...(manager ? [phrase(voice, 'help.manager')] : []),
    ].join('\n'),
  data: noData,
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: null,
};
