import type { LeftInField } from '../../core/answers/left.ts';
import { tenths, ticketTons } from '../parts/figures.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { Data, TellingKind } from '../telling-kind.ts';
import { fieldName, number, phrase, tons } from '../voice.ts';
import type { Voice } from '../voice.ts';

const leftText = (fields: readonly LeftInField[], voice: Voice): string => {
  if (fields.length === 0) return phrase(voice, 'left.none');
  const lines = fields.map((line) =>
    phrase(voice, line.hoursLeft === null ? 'left.field' : 'left.field-hours', {
      field: fieldName(voice, line.field),
      tons: tons(voice, line.leftLb),
      acres: number(voice, line.acresLeft, 1),
      loads: line.loadsLeft,
      hours: number(voice, line.hoursLeft ?? 0, 1),
    }),
  );
  return [...lines, phrase(voice, 'left.by-yield')].join('\n');
};

const fieldData = (line: LeftInField): Data => ({
  field: line.field,
  delivered: ticketTons(line.deliveredLb),
  tonsLeft: ticketTons(line.leftLb),
  acresLeft: tenths(line.acresLeft),
  loadsLeft: line.loadsLeft,
  hoursLeft: line.hoursLeft === null ? null : tenths(line.hoursLeft),
});

/** What is still in the ground, field by field. */
export const left: TellingKind<'left'> = {
  text: ({ fields }, voice) => leftText(fields, voice),
  data: ({ fields }) => ({ fields: fields.map(fieldData) }),
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: null,
};
