import { describe, expect, it } from 'vitest';
import { at, given, loadsOf, report, step } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';

const [north] = sampleRoster.stations;
if (!north) throw new Error('the sample has a station');
const twoStations = {
  ...sampleRoster,
  stations: [north, { ...north, id: 'west', name: 'West' }],
  fields: sampleRoster.fields.map((field) =>
    field.id === 'south-80' ? { ...field, station: 'west' } : field,
  ),
};

describe('a step of a truck', () => {
  it('is of the own truck where none is named', () => {
    expect(given().when(report('left-field'), 'ben', '10:00').added).toMatchObject([
      { truck: '2', step: 'left-field', by: 'ben', atMs: at('10:00'), timeStated: false },
    ]);
  });

  it('is of the truck that was taken since', () => {
    const after = given().when({ do: 'take-truck', person: null, truck: '5' }, 'ben', '05:00');
    expect(after.when(report('left-field'), 'ben', '10:00').added).toMatchObject([{ truck: '5' }]);
  });

  it('needs a truck', () => {
    expect(given().when(report('left-field'), 'fritz', '10:00').refusal).toEqual({ refused: 'no-truck' });
  });

  it('may be of another truck, told by anyone', () => {
    expect(given().when(report('down', { truck: '4', words: 'flat' }), 'ana', '10:00').added).toMatchObject([
      { truck: '4', step: 'down', words: 'flat', by: 'ana' },
    ]);
  });

  it('has a count of the trucks ahead as an entry of its own', () => {
    const after = given().when(report('joined-line', { ahead: 14 }), 'ana', '10:00');
    expect(after.added.map(({ kind, id }) => [kind, id.slice(-2)])).toEqual([
      ['truck-reported', '#0'],
      ['line-seen', '#1'],
    ]);
    expect(after.harvest.headCounts).toMatchObject([{ station: 'north-station', ahead: 14, truck: '1' }]);
  });

  it('the count is of the line that the load stands in', () => {
    const facts = [step('1', 'left-field', '09:30', { field: 'south-80' })];
    const inLine = given(facts, twoStations).when(report('joined-line', { ahead: 3 }), 'ana', '10:00');
    expect(inLine.harvest.headCounts).toMatchObject([{ station: 'west' }]);
    const counted = given(facts, twoStations).when(
      { do: 'see-line', station: null, ahead: 3, atMs: null },
      'ana',
      '10:00',
    );
    expect(counted.harvest.headCounts).toMatchObject([{ station: 'west' }]);
  });
});

describe('times', () => {
  it('a time stated is when it happened', () => {
    const after = given().when(report('left-field', { atMs: at('09:15') }), 'ana', '10:00');
    expect(after.added).toMatchObject([{ atMs: at('09:15'), sentMs: at('10:00'), timeStated: true }]);
  });

  it('clocks may differ by ten minutes, not more', () => {
    expect(given().when(report('dumped', { atMs: at('10:10') }), 'ana', '10:00').refusal).toBeNull();
    expect(given().when(report('dumped', { atMs: at('10:11') }), 'ana', '10:00').refusal).toEqual({
      refused: 'time-ahead',
      atMs: at('10:11'),
    });
  });

  it.each([
    { do: 'see-line', station: null, ahead: 3, atMs: at('12:00') },
    { do: 'see-pilers', station: null, open: 1, down: null, atMs: at('12:00') },
    { do: 'report-station', station: null, open: false, untilMs: null, atMs: at('12:00') },
    { do: 'measure-root', field: null, station: null, temperatureF: 54, atMs: at('12:00') },
    { do: 'check-crown', field: null, sound: true, atMs: at('12:00') },
    { do: 'dig-field', field: 'north-40', atMs: at('12:00') },
  ] as const)('the future is refused: $do', (intent) => {
    expect(given().when(intent, 'ruth', '10:00')).toMatchObject({
      refusal: { refused: 'time-ahead' },
      facts: [],
    });
  });

  it('a station may close until a time to come', () => {
    const closed = {
      do: 'report-station',
      station: null,
      open: false,
      untilMs: at('18:00'),
      atMs: null,
    } as const;
    expect(given().when(closed, 'ana', '10:00').harvest.stationReports).toMatchObject([
      { untilMs: at('18:00') },
    ]);
  });
});

it('what is seen at the station needs a station on the list', () => {
  const nowhere = { ...sampleRoster, stations: [] };
  const seen = { do: 'see-line', station: null, ahead: 3, atMs: null } as const;
  expect(given([], nowhere).when(seen, 'ana', '10:00').refusal).toEqual({ refused: 'no-station' });
});

it('a load is still taken where no station is on the list', () => {
  const after = given([], { ...sampleRoster, stations: [] }).when(
    report('joined-line', { ahead: 3 }),
    'ana',
    '10:00',
  );
  expect(loadsOf(after.harvest, '1')).toHaveLength(1);
});

it('languages and emergencies need no role and no truck', () => {
  const after = given().when({ do: 'choose-language', language: 'es' }, 'gus', '10:00');
  expect(after.harvest.roster.people.find(({ id }) => id === 'gus')?.language).toBe('es');
  expect(given().when({ do: 'call-emergency', words: 'he is hurt' }, 'gus', '10:00').added).toMatchObject([
    { kind: 'emergency-called', words: 'he is hurt', caller: 'Gus' },
  ]);
});

describe('roots above the limit of 55 °F', () => {
  const root = (temperatureF: number, by: string) =>
    given().when(
      { do: 'measure-root', field: 'north-40', station: null, temperatureF, atMs: null },
      by,
      '10:00',
    ).warnings;

  // 0.708 lb a ton and day at 65 °F, 0.516 at 55 °F (ASHRAE, see tests/outside/heat.test.ts).
  it('cost foreman and grower so much sugar if they are piled', () => {
    expect(root(65, 'ruth')).toEqual([
      { warning: 'root-too-warm', station: 'north-station', limitF: 55, stopped: false },
      { warning: 'root-cost', limitF: 55, lbPerTonDay: expect.closeTo(0.708 - 0.516, 2) as number },
    ]);
  });

  it('are not reckoned to whom nothing is to decide, nor for next to nothing', () => {
    const tooWarm = [{ warning: 'root-too-warm', station: 'north-station', limitF: 55, stopped: false }];
    expect(root(65, 'ben')).toEqual(tooWarm);
    expect(root(56, 'ruth')).toEqual(tooWarm);
    expect(root(55, 'ruth')).toEqual([]);
  });
});
