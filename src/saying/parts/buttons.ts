import type { FactOf } from '../../core/book/facts.ts';
import type { BoardRow } from '../../core/answers/board.ts';
import type { Button } from '../../ports/chat.ts';
import { phrase } from '../voice.ts';
import type { Voice } from '../voice.ts';

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

export const stepButton = (step: Step, truck: string, voice: Voice): Button => ({
  label: phrase(voice, `button.${step}`),
  words: phrase(voice, `words.${step}`, { truck }),
});

/** After this step of the round trip. */
export const nextStepButtons = (
  { step, truck }: Pick<FactOf<'truck-reported'>, 'step' | 'truck'>,
  voice: Voice,
): Button[] => nextSteps(step).map((next) => stepButton(next, truck, voice));

export const gotItButton = (voice: Voice): Button => ({
  label: phrase(voice, 'button.got-it'),
  words: phrase(voice, 'words.got-it'),
  byThumb: true,
});
