import { describe, expect, it } from 'vitest';
import { foldHarvest } from '../../../src/core/harvest/fold.ts';
import type { Roster } from '../../../src/core/roster.ts';
import { left } from '../../../src/core/answers/left.ts';
import { step, ticket } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';

const roster: Roster = {
  ...sampleRoster,
  fields: sampleRoster.fields.map((field) =>
    field.id === 'north-40' ? { ...field, yieldTonsPerAcre: 30 } : field,
  ),
};
const digger = { rows: 6, rowSpacingIn: 22, speedMph: 3, efficiency: 0.6 };
const brought = [
  step('1', 'left-field', '07:00', { field: 'north-40' }),
  ticket('1', '07:45', 50_000),
  step('1', 'left-field', '08:30', { field: 'south-80' }),
  ticket('1', '09:20', 30_000),
];

describe('what is left in the ground', () => {
  it('is acres times yield, at 20 tons a load while there are no tickets', () => {
    expect(left(foldHarvest(roster, []), null)).toEqual([
      {
        ...{ field: 'north-40', deliveredLb: 0, leftLb: 2_280_000, acresLeft: 38, dug: null },
        ...{ loadsLeft: 57, hoursLeft: null },
      },
    ]);
  });

  it('less what the tickets of the field say, at their mean load', () => {
    const [north] = left(foldHarvest(roster, brought), 'north-40');
    // 38 x 30 x 2,000 - 50,000 lb; a load too many for the rest: 2,230,000 / 40,000 = 55.75.
    expect(north).toMatchObject({ deliveredLb: 50_000, leftLb: 2_230_000, loadsLeft: 56 });
    expect(north?.acresLeft).toBeCloseTo(2_230_000 / 60_000, 12);
  });

  // 6 rows at 22 in., 3 mph, 60 %: 2.40 acres/h (ASABE EP496).
  it('in hours of digging', () => {
    const [north] = left(foldHarvest({ ...roster, digger }, []), 'north-40');
    expect(north?.hoursLeft).toBeCloseTo(38 / 2.4, 12);
  });

  it('is never below nothing', () => {
    const many = Array.from({ length: 60 }, (_, n) =>
      ticket('1', `${String(7 + Math.floor(n / 6)).padStart(2, '0')}:${n % 6}0`, 60_000, {
        serial: `${n}`,
        field: 'north-40',
      }),
    );
    expect(left(foldHarvest(roster, many), null)).toMatchObject([{ leftLb: 0, acresLeft: 0, loadsLeft: 0 }]);
  });

  it('is not told of fields without acres or yield', () => {
    expect(left(foldHarvest(roster, []), 'south-80')).toEqual([]);
    expect(left(foldHarvest(sampleRoster, []), null)).toEqual([]);
  });
});
