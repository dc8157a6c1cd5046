import type { Unclear } from '../../core/intent.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase, ticketExamples } from '../voice.ts';
import type { Voice } from '../voice.ts';

const questionText = (problem: Unclear, voice: Voice): string => {
  switch (problem.problem) {
    case 'not-understood':
      return phrase(voice, 'question.not-understood', ticketExamples(voice));
    case 'unknown-name':
      return phrase(voice, `question.unknown-${problem.sort}`, {
        said: problem.said,
        known: problem.known.join(', '),
      });
    case 'which-time':
      return phrase(voice, 'question.which-time', { said: problem.said });
    case 'which-span':
      return phrase(voice, `question.which-span.${problem.of}`, { said: problem.said });
    case 'cannot-teach':
      return phrase(voice, `question.cannot-teach.${problem.why}`, { said: problem.said });
    case 'which-amount':
      return phrase(voice, 'question.which-amount', ticketExamples(voice));
  }
};

/** One short question with examples or with the names that are known. */
export const question: TellingKind<'question'> = {
  text: ({ problem }, voice) => questionText(problem, voice),
  data: ({ problem, said }) => ({ problem: problem.problem, said }),
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: null,
};
