import { factLines, entriesData } from '../parts/facts.ts';
import { nextStepButtons, stepButton } from '../parts/buttons.ts';
import { warningLines } from '../parts/warnings.ts';
import type { Button } from '../../ports/chat.ts';
import { never } from '../telling-kind.ts';
import type { TellingKind, TellingOf } from '../telling-kind.ts';
import { phrase } from '../voice.ts';
import type { Voice } from '../voice.ts';

/** Counts to choose from, by a driver who stands in the line. */
const COUNTS = [0, 5, 10, 20] as const;

const countButtons = (voice: Voice): Button[] =>
  COUNTS.map((count) => ({
    label: phrase(voice, 'button.ahead', { count }),
    words: phrase(voice, 'words.ahead', { count }),
  }));

const buttons = ({ facts, asksCount }: TellingOf<'receipt'>, voice: Voice): readonly Button[] => {
  const last = facts.findLast((fact) => fact.kind === 'truck-reported' || fact.kind === 'ticket-booked');
  if (last?.kind === 'ticket-booked')
    return [stepButton('at-field', last.ticket.truck, voice), stepButton('loaded', last.ticket.truck, voice)];
  return [...(asksCount ? countButtons(voice) : []), ...(last ? nextStepButtons(last, voice) : [])];
};

/** What was taken down, with what deserves a second look. */
export const receipt: TellingKind<'receipt'> = {
  text: ({ facts, warnings, asksCount }, voice) =>
    [
      ...factLines(facts, voice),
      ...warningLines(warnings, voice),
      ...(asksCount ? [phrase(voice, 'receipt.asks-count')] : []),
    ].join('\n'),
  data: ({ facts, warnings, asksCount }, iso) => ({
    entries: entriesData(facts, iso),
    warnings: warnings.map(({ warning }) => warning),
    asksCount,
  }),
  buttons,
  rings: never,
  holdsMin: null,
};
