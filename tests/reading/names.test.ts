import { expect, test } from 'vitest';
import type { Roster } from '../../src/core/roster.ts';
import { sampleRoster } from '../support/roster.ts';
import { intents, overheard, report } from './reading-of.ts';

const fields = ['North 40', 'South 80', 'Creek bottom'];
const trucks = ['Truck 1', 'Truck 2', 'Truck 3', 'Truck 4', 'Truck 5'];

test.each([
  ['truck 9 loaded', 'truck', 'truck 9', trucks],
  ['la troca 9 se descompuso', 'truck', 'troca 9', trucks],
  ['where is truck 9', 'truck', 'truck 9', trucks],
  ['leaving west 20 full', 'field', 'west 20', fields],
  ['digging west 20 now', 'field', 'west 20', fields],
])('%s', (text, sort, said, known) => {
  expect(overheard(text)).toEqual({
    found: 'unclear',
    problem: { problem: 'unknown-name', sort, said, known },
  });
});

test.each(['north 40', 'North forty', 'NORTH40', 'n40', 'n 40', 'noth 40', 'norht 40', 'north-40'])(
  '%s',
  (name) => {
    expect(overheard(`leaving ${name} full`)).toEqual(intents(report('left-field', { field: 'north-40' })));
  },
);

test('digits are never taken for a slip: north 48 is not North 40', () => {
  const problem = { problem: 'unknown-name', sort: 'field', said: 'north 48', known: fields };
  expect(overheard('leaving north 48 full')).toEqual({ found: 'unclear', problem });
});

test('a name that fits two is asked about, with those two', () => {
  const [first] = sampleRoster.fields;
  if (first === undefined) throw new Error('The sample roster has no field.');
  const twin = { ...first, id: 'north-60', name: 'North 60', aliases: [] };
  const roster: Roster = { ...sampleRoster, fields: [...sampleRoster.fields, twin] };
  const problem = { problem: 'unknown-name', sort: 'field', said: 'north', known: ['North 40', 'North 60'] };
  expect(overheard('leaving north full', { roster })).toEqual({ found: 'unclear', problem });
});

test('names with letters: a truck called Big Red', () => {
  const [first] = sampleRoster.trucks;
  if (first === undefined) throw new Error('The sample roster has no truck.');
  const red = { ...first, id: 'red', name: 'Big Red', aliases: ['the peterson'] };
  const roster: Roster = { ...sampleRoster, trucks: [...sampleRoster.trucks, red] };
  for (const text of ['big red loaded', 'BIG RED is loaded', 'the peterson loaded']) {
    expect(overheard(text, { roster })).toEqual(intents(report('left-field', { truck: 'red' })));
  }
});

test('a person called by name is not the one who is loaded', () => {
  expect(overheard('Mateo, loaded')).toEqual(intents(report('left-field')));
  expect(overheard('carla is loaded')).toEqual(intents(report('left-field', { truck: '3' })));
});

test('an alias is known by its first word, and without its article', () => {
  const [north, ...others] = sampleRoster.fields;
  if (north === undefined) throw new Error('the sample has a field');
  const roster = {
    ...sampleRoster,
    fields: [
      { ...north, aliases: ['norte 40'] },
      ...others.map((field, i) => (i === 0 ? { ...field, aliases: ['el río'] } : field)),
    ],
  };
  const field = (text: string): unknown => {
    const reading = overheard(text, { roster });
    return reading.found === 'intents' ? reading.intents[0] : reading;
  };
  expect(field('cargando en el norte')).toMatchObject({ field: 'north-40' });
  expect(field('salgo del río lleno')).toMatchObject({ field: 'south-80' });
});
