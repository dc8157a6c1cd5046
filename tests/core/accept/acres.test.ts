import { describe, expect, it } from 'vitest';
import { left } from '../../../src/core/answers/left.ts';
import type { Intent } from '../../../src/core/intent.ts';
import { at, fact, given, undo } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';

const dug: Extract<Intent, { do: 'report-acres' }> = {
  do: 'report-acres',
  machine: 'digger',
  acres: 14,
  field: 'north-40',
  atMs: null,
};
const withYield = {
  ...sampleRoster,
  fields: sampleRoster.fields.map((field) => ({ ...field, acres: 38, yieldTonsPerAcre: 30 })),
};

describe('acres that are done', () => {
  it('stand beside what is left by the tickets, the newest word of the digger first', () => {
    const after = given([], withYield)
      .when(dug, 'fritz', '10:00')
      .when({ ...dug, acres: 16 }, 'fritz', '12:00')
      .when({ ...dug, machine: 'topper', acres: 20 }, 'gus', '12:10');
    expect(left(after.harvest, 'north-40')).toMatchObject([{ dug: { acres: 16, atMs: at('12:00') } }]);
    expect(left(after.harvest, 'south-80')).toMatchObject([{ dug: null }]);
  });

  it('are of the field that is dug where none is named', () => {
    const digging = fact({ kind: 'field-dug', field: 'south-80' }, '07:00');
    expect(given([digging]).when({ ...dug, field: null }, 'fritz', '10:00').added).toMatchObject([
      { kind: 'acres-told', field: 'south-80', acres: 14 },
    ]);
  });

  it('no longer count where they are taken back', () => {
    const after = given([], withYield).when(dug, 'fritz', '10:00').when(undo(), 'fritz', '10:01');
    expect(left(after.harvest, 'north-40')).toMatchObject([{ dug: null }]);
  });

  it('cannot be more than the field has', () => {
    expect(given([], withYield).when({ ...dug, acres: 60 }, 'fritz', '10:00').refusal).toEqual({
      refused: 'more-than-field',
      field: 'north-40',
      acres: 60,
      fieldAcres: 38,
    });
  });
});
