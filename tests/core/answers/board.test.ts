import { expect, it } from 'vitest';
import { foldHarvest } from '../../../src/core/harvest/fold.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import { board } from '../../../src/core/answers/board.ts';
import { at, fact, step, ticket } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';

const rows = (facts: readonly Fact[]) => board(foldHarvest(sampleRoster, facts), at('00:00'));

it('has every truck of the list in its order, also those that nothing was heard of', () => {
  expect(rows([]).map(({ truck, phase, loads }) => [truck, phase, loads])).toEqual([
    ['1', null, 0],
    ['2', null, 0],
    ['3', null, 0],
    ['4', null, 0],
    ['5', null, 0],
  ]);
});

it('shows phase, since when, from where, and loads of the day', () => {
  const [first] = rows([
    step('1', 'dumped', '2026-10-19 18:00'),
    step('1', 'left-field', '07:00', { field: 'north-40' }),
    ticket('1', '07:45', 50_520),
    step('1', 'left-field', '08:20', { field: 'south-80' }),
  ]);
  expect(first).toEqual({
    truck: '1',
    phase: 'hauling',
    sinceMs: at('08:20'),
    source: 'stated',
    field: 'south-80',
    station: 'north-station',
    loads: 1,
    words: null,
  });
});

it('shows the field at which an empty truck is, and else that of its load', () => {
  const there = (...facts: readonly Fact[]) => rows(facts)[0]?.field;
  const load = step('1', 'left-field', '07:00', { field: 'north-40' });
  const dumped = step('1', 'dumped', '07:40');
  for (const said of ['at-field', 'loading'] as const)
    expect(there(load, dumped, step('1', said, '08:10', { field: 'south-80' }))).toBe('south-80');
  expect(there(step('1', 'at-field', '06:50', { field: 'south-80' }), load)).toBe('north-40');
  expect(there(load, dumped)).toBe('north-40');
  const atSouth = step('1', 'at-field', '06:00', { field: 'south-80' });
  const moved = fact({ kind: 'field-dug', field: 'creek-bottom' }, '06:30');
  expect(there(atSouth, moved, step('1', 'left-field', '07:00'))).toBe('creek-bottom');
  expect(there(step('1', 'parked', '06:00', { field: 'south-80' }))).toBeNull();
});

it('marks what was worked out', () => {
  const [, second] = rows([
    step('2', 'left-field', '07:00'),
    step('2', 'down', '07:10', { words: 'flat' }),
    step('2', 'up', '07:50'),
  ]);
  expect(second).toMatchObject({ phase: 'hauling', source: 'inferred', words: null });
});

it('tells why a truck is down', () => {
  const [, second] = rows([step('2', 'down', '07:10', { words: 'flat' })]);
  expect(second).toMatchObject({ phase: 'down', sinceMs: at('07:10'), words: 'flat' });
});

it('a truck taken off the list is shown no more', () => {
  const gone = { ...sampleRoster, trucks: sampleRoster.trucks.filter(({ id }) => id !== '1') };
  expect(
    board(foldHarvest(gone, [step('1', 'left-field', '07:00')]), at('00:00')).map(({ truck }) => truck),
  ).toEqual(['2', '3', '4', '5']);
});
