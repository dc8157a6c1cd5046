import type { FactOf } from '../core/book/facts.ts';
import type { BoardRow } from '../core/answers/board.ts';
import type { Telling } from '../core/telling.ts';
import type { Button } from '../ports/chat.ts';
import { phrase } from './voice.ts';
import type { Voice } from './voice.ts';

type Step = 'loaded' | 'in-line' | 'dumped' | 'empty' | 'at-field' | 'ticket';

/**
 * The likely next steps of a truck, pressed at the next safe stop, so that nobody types. The ticket comes with the second
 * weight: a platform that has forms opens one.
 */
const nextSteps = (step: FactOf<'truck-reported'>['step']): readonly Step[] => {
  switch (step) {
    case 'at-field':
    case 'loading':
    case 'up':
      return ['loaded'];
    case 'left-field':
      return ['in-line', 'dumped'];
    case 'joined-line':
    case 'first-weighed':
      return ['dumped'];
    case 'dumped':
      return ['ticket', 'empty'];
    case 'returning':
      return ['ticket', 'at-field', 'loaded'];
    case 'parked':
    case 'down':
      return [];
  }
};

/** What a truck said last, as its phase shows it. */
const LAST_STEP = {
  'at-field': 'at-field',
  loading: 'loading',
  hauling: 'left-field',
  'in-line': 'joined-line',
  'on-piler': 'dumped',
  returning: 'returning',
  parked: 'parked',
  down: 'down',
} as const satisfies Record<NonNullable<BoardRow['phase']>, FactOf<'truck-reported'>['step']>;

/** The buttons of a truck as it stands, for a page that is open at any time. A parked one may begin its day. */
export const buttonsForTruck = ({ truck, phase }: BoardRow, voice: Voice): Button[] => {
  const steps =
    phase === null || phase === 'parked' ? (['at-field', 'loaded'] as const) : nextSteps(LAST_STEP[phase]);
  return steps.map((step) => stepButton(step, truck, voice));
};

const stepButton = (step: Step, truck: string, voice: Voice): Button => ({
  label: phrase(voice, `button.${step}`),
  words: phrase(voice, `words.${step}`, { truck }),
});

/** Counts to choose from, by a driver who stands in the line. */
const COUNTS = [0, 5, 10, 20] as const;

const countButtons = (voice: Voice): Button[] =>
  COUNTS.map((count) => ({
    label: phrase(voice, 'button.ahead', { count }),
    words: phrase(voice, 'words.ahead', { count }),
  }));
/** A stop, a new time and a reminder of one; a watch asks for nothing. */
const asksToConfirm = (telling: Telling): boolean =>
  telling.tell === 'reminder' ||
  (telling.tell === 'notice' && (telling.step.stage === 'stop' || telling.step.stage === 'update'));

export const buttonsFor = (telling: Telling, voice: Voice): Button[] => {
  if (asksToConfirm(telling))
    return [{ label: phrase(voice, 'button.got-it'), words: phrase(voice, 'words.got-it') }];
  if (telling.tell !== 'receipt') return [];
  const last = telling.facts.findLast(
    (fact) => fact.kind === 'truck-reported' || fact.kind === 'ticket-booked',
  );
  if (last?.kind === 'ticket-booked')
    return [stepButton('at-field', last.ticket.truck, voice), stepButton('loaded', last.ticket.truck, voice)];
  const counts = telling.asksCount ? countButtons(voice) : [];
  const steps = last ? nextSteps(last.step).map((step) => stepButton(step, last.truck, voice)) : [];
  return [...counts, ...steps];
};
