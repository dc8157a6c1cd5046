import { expect, test } from 'vitest';
import type { ListChangeAsk } from '../../src/core/intent.ts';
import { chatter, intents, overheard } from './reading-of.ts';

type Person = Extract<ListChangeAsk, { list: 'people'; put: unknown }>['put'];
const person = (name: string, said: Partial<Person> = {}): ListChangeAsk => ({
  list: 'people',
  put: { name, role: 'driver', truck: null, language: null, address: null, ...said },
});
const truck = (
  id: string,
  grossLimitLb: number | null,
  usualTareLb: { min: number; max: number } | null = null,
) => ({ list: 'trucks', put: { id, grossLimitLb, usualTareLb } }) as const;
const field = (name: string, acres: number | null, station: string | null = null) =>
  ({ list: 'fields', put: { name, acres, station } }) as const;
const air = (name: string, airLimitF: number) => ({ list: 'stations', put: { name, airLimitF } }) as const;
const line = (lineLimitMin: number) => ({ list: 'limits', put: { lineLimitMin } }) as const;

const cases: [string, ListChangeAsk][] = [
  ['add driver Luis truck 4 spanish', person('Luis', { truck: '4', language: 'es' })],
  ['Add driver Luis, truck 4, Spanish.', person('Luis', { truck: '4', language: 'es' })],
  ['agrega chofer José troca 4', person('José', { truck: '4' })],
  ['add foreman Pat english', person('Pat', { role: 'foreman', language: 'en' })],
  ['add digger operator Lou', person('Lou', { role: 'digger-operator' })],
  ['add driver Luis @U123', person('Luis', { address: '@U123' })],
  ['add truck 6 limit 80000', truck('6', 80_000)],
  ['add truck 6', truck('6', null)],
  ['truck 3 limit 86000', truck('3', 86_000)],
  ['limit truck 4 at 84,000 lb', truck('4', 84_000)],
  ['limite de la troca 3 86000', truck('3', 86_000)],
  ['truck 3 tare 28000 to 32000', truck('3', null, { min: 28_000, max: 32_000 })],
  ['add field west 20 38 acres', field('west 20', 38)],
  ['add field west 20, 38 acres to north station', field('west 20', 38, 'north-station')],
  // 12 ha / 0.40468564 ha an acre
  ['add field Long strip 12 ha', field('Long strip', 29.65)],
  ['remove truck 4', { list: 'trucks', remove: '4' }],
  ['remove driver ana', { list: 'people', remove: 'ana' }],
  ['quita el campo creek bottom', { list: 'fields', remove: 'creek-bottom' }],
  ['limit north station 57', air('North station', 57)],
  ['air limit 57 at north station', air('North station', 57)],
  ['line limit 45 min', line(45)],
  ['limite de fila 45', line(45)],
];

test.each(cases)('%s', (text, change) => {
  expect(overheard(text)).toEqual(intents({ do: 'change-list', change }));
});

const trucks = ['Truck 1', 'Truck 2', 'Truck 3', 'Truck 4', 'Truck 5'];

test.each([
  ['remove truck 6', 'truck', 'truck 6', trucks],
  ['truck 9 limit 86000', 'truck', 'truck 9', trucks],
  ['remove field west 20', 'field', 'west 20', ['North 40', 'South 80', 'Creek bottom']],
])('%s: no such name', (text, sort, said, known) => {
  expect(overheard(text)).toEqual({
    found: 'unclear',
    problem: { problem: 'unknown-name', sort, said, known },
  });
});

test.each([
  'add salt',
  'add me to the list',
  'remove truck 4 from the road',
  'quita la troca 4 del camino',
  'remove your hat',
  'truck 3 is over the limit by 2000',
  'the speed limit is 35 on the county road',
])('%s changes nothing', (text) => {
  expect(overheard(text)).toEqual(chatter);
});
