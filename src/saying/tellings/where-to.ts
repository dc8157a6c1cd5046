import { exceptionLines } from '../parts/dig.ts';
import { noticeShort } from '../parts/notice.ts';
import { ANSWER_HOLDS_MIN, never, noButtons } from '../telling-kind.ts';
import type { TellingKind, TellingOf } from '../telling-kind.ts';
import { fieldName, phrase, stationName } from '../voice.ts';
import type { Voice } from '../voice.ts';

const fieldLine = ({ field, station }: TellingOf<'where-to'>, voice: Voice): string => {
  if (field === null) return phrase(voice, 'where-to.unknown');
  const values = { field: fieldName(voice, field) };
  return station === null
    ? phrase(voice, 'where-to.field', values)
    : phrase(voice, 'where-to.field-station', { ...values, station: stationName(voice, station) });
};

/** At which field the digger is; what stops the dig comes first. */
export const whereTo: TellingKind<'where-to'> = {
  text: (telling, voice) =>
    [
      ...telling.dig.holds.map((hold) => noticeShort(hold, telling.dig.rain, voice)),
      fieldLine(telling, voice),
      ...exceptionLines(telling.dig, voice),
    ].join('\n'),
  data: ({ field, station, dig }) => ({ field, station, mayDig: dig.holds.length === 0 }),
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: ANSWER_HOLDS_MIN,
};
