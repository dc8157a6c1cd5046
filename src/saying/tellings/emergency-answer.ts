import { always, noButtons, noData } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase } from '../voice.ts';

export const emergencyAnswer: TellingKind<'emergency-answer'> = {
  text: (_, voice) => phrase(voice, 'emergency.answer'),
  data: noData,
  buttons: noButtons,
  rings: always,
  holdsMin: null,
};
