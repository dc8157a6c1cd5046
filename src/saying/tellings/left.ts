import type { LeftInField } from '../../core/answers/left.ts';
import { tenths, ticketTons } from '../parts/figures.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { Data, Iso, TellingKind } from '../telling-kind.ts';
import { fieldName, number, phrase, time, tons } from '../voice.ts';
import type { Voice } from '../voice.ts';

const dugLine = ({ field, dug }: LeftInField, voice: Voice): string[] =>
  dug === null
    ? []
    : [
        phrase(voice, 'left.dug', {
          field: fieldName(voice, field),
          acres: number(voice, dug.acres, 1),
          time: time(voice, dug.atMs),
        }),
      ];

const leftText = (fields: readonly LeftInField[], voice: Voice): string => {
  if (fields.length === 0) return phrase(voice, 'left.none');
  const lines = fields.flatMap((line) => [
    phrase(voice, line.hoursLeft === null ? 'left.field' : 'left.field-hours', {
      field: fieldName(voice, line.field),
      tons: tons(voice, line.leftLb),
      acres: number(voice, line.acresLeft, 1),
      loads: line.loadsLeft,
      hours: number(voice, line.hoursLeft ?? 0, 1),
    }),
    ...dugLine(line, voice),
  ]);
  return [...lines, phrase(voice, 'left.by-yield')].join('\n');
};

const fieldData = (line: LeftInField, iso: Iso): Data => ({
  field: line.field,
  delivered: ticketTons(line.deliveredLb),
  tonsLeft: ticketTons(line.leftLb),
  acresLeft: tenths(line.acresLeft),
  loadsLeft: line.loadsLeft,
  dug: line.dug === null ? null : { acres: line.dug.acres, at: iso(line.dug.atMs) },
  hoursLeft: line.hoursLeft === null ? null : tenths(line.hoursLeft),
});

/** What is still in the ground, field by field. */
export const left: TellingKind<'left'> = {
  text: ({ fields }, voice) => leftText(fields, voice),
  data: ({ fields }, iso) => ({ fields: fields.map((line) => fieldData(line, iso)) }),
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: null,
};
