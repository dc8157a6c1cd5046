import { alertData, alertText } from '../parts/alert.ts';
import { always, never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';

export const dangerUnclear: TellingKind<'danger-unclear'> = {
  text: (telling, voice) => alertText('emergency.unclear', telling, voice),
  data: alertData,
  buttons: noButtons,
  rings: always,
  restsOnForecast: never,
  holdsMin: null,
};
