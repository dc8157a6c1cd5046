import { expect, test } from 'vitest';
import type { Intent } from '../../src/core/intent.ts';
import { at, intents, overheard, report, ticket } from './reading-of.ts';

const left = report('left-field');
const line = report('joined-line');

const cases: [string, ...Intent[]][] = [
  ['loaded', left],
  ['LOADED', left],
  ["I'm loaded, heading to the piler", left],
  ['good morning, loaded', left],
  ['hola, ya voy cargado, gracias', left],
  ['loded', left],
  ['laoded', left],
  ['leaving north 40 full', report('left-field', { field: 'north-40' })],
  ['leaving n40 full', report('left-field', { field: 'north-40' })],
  ['pulling out of south 80 loaded', report('left-field', { field: 'south-80' })],
  ['left north 40 at 10.15', report('left-field', { field: 'north-40', atMs: at('10:15') })],
  ['cargado', left],
  ['ya cargue', left],
  ['Ya cargué', left],
  ['ya voy cargado', left],
  ['salgo del north 40 lleno', report('left-field', { field: 'north-40' })],
  ['ya sali del south 80', report('left-field', { field: 'south-80' })],
  ['loading', report('loading')],
  ['me estan cargando', report('loading')],
  ['loading at creek bottom', report('loading', { field: 'creek-bottom' })],

  ['in line at 10:15', report('joined-line', { atMs: at('10:15') })],
  ['in line, 14 ahead', report('joined-line', { ahead: 14 })],
  ['in line 14', report('joined-line', { ahead: 14 })],
  ['in line with 6 ahead of me', report('joined-line', { ahead: 6 })],
  ['in line 1015', report('joined-line', { atMs: at('10:15') })],
  ['in line at 1015 14 ahead', report('joined-line', { atMs: at('10:15'), ahead: 14 })],
  ['in line at ten fifteen', report('joined-line', { atMs: at('10:15') })],
  ['in line behind twelve trucks', report('joined-line', { ahead: 12 })],
  ['number 5 in line', report('joined-line', { ahead: 4 })],
  ["I'm third in line", report('joined-line', { ahead: 2 })],
  ['in line at north station', report('joined-line', { station: 'north-station' })],
  ['in line at north', report('joined-line', { station: 'north-station' })],
  ['In line. 14 trucks ahead.', report('joined-line', { ahead: 14 })],
  ['14 trucks ahead, in line', report('joined-line', { ahead: 14 })],
  ['in line at 10:15 with 14 in front', report('joined-line', { atMs: at('10:15'), ahead: 14 })],
  ['estoy en la fila', line],
  ['estoy en la fila, como 10 adelante', report('joined-line', { ahead: 10 })],
  ['soy el 5 en la fila', report('joined-line', { ahead: 4 })],

  ['weighed in 79840', ticket(null, { grossLb: 79_840 })],
  ['weighed in at 10:05', report('first-weighed', { atMs: at('10:05') })],
  ['ya pese', report('first-weighed')],
  ['dumped', report('dumped')],
  ['dumped at north station', report('dumped', { station: 'north-station' })],
  ['descargue', report('dumped')],
  ['ya tire', report('dumped')],
  ['empty, heading back', report('returning')],
  ['vacio, voy de regreso', report('returning')],
  ['weighed out at 10:31', report('returning', { atMs: at('10:31') })],
  ['heading back to north 40', report('returning', { field: 'north-40' })],
  ['back at the field', report('at-field')],
  ['at the field', report('at-field')],
  ['back at north 40', report('at-field', { field: 'north-40' })],
  ['ya llegue al campo', report('at-field')],
  ['parked', report('parked')],
  ['done for the day', report('parked')],
  ['termine por hoy', report('parked')],

  ['truck 4 broke down, flat', report('down', { truck: '4', words: 'flat' })],
  ['truck 4 broke', report('down', { truck: '4' })],
  ['truck 4 is down', report('down', { truck: '4' })],
  [
    'truck 4 broke down lost a wheel bearing at creek bottom',
    report('down', { truck: '4', field: 'creek-bottom', words: 'lost a wheel bearing' }),
  ],
  ['I broke down on the highway', report('down', { words: 'on the highway' })],
  ['got a flat', report('down', { words: 'got a flat' })],
  ['se poncho la llanta', report('down', { words: 'se poncho la llanta' })],
  ['se descompuso la troca 4', report('down', { truck: '4' })],
  ['la troca 4 no prende', report('down', { truck: '4', words: 'no prende' })],
  ['back up', report('up')],
  ['fixed', report('up')],
  ['ya quedo', report('up')],
  ['ya esta arreglada', report('up')],

  ['dumped, heading back', report('dumped'), report('returning')],
  [
    'truck 3 loaded and truck 4 in line',
    report('left-field', { truck: '3' }),
    report('joined-line', { truck: '4' }),
  ],
  [
    'truck 3 loaded truck 4 in line',
    report('left-field', { truck: '3' }),
    report('joined-line', { truck: '4' }),
  ],
  ['trucks 3 and 4 loaded', report('left-field', { truck: '3' }), report('left-field', { truck: '4' })],
  [
    'truck 3 loaded at 10:15, in line at 10:40, 6 ahead',
    report('left-field', { truck: '3', atMs: at('10:15') }),
    report('joined-line', { truck: '3', atMs: at('10:40'), ahead: 6 }),
  ],
];

test.each(cases)('%s', (text, ...expected) => {
  expect(overheard(text)).toEqual(intents(...expected));
});

const naming = [
  'truck 3',
  'truck three',
  'T3',
  't3',
  '#3',
  'troca 3',
  'troca tres',
  'la 3',
  'number 3',
  'camion 3',
  'carla',
];

test.each(naming)('%s is truck 3', (name) => {
  expect(overheard(`${name} loaded`)).toEqual(intents(report('left-field', { truck: '3' })));
});

test('a phone hears "truck four" as "truck for"', () => {
  expect(overheard('truck for loaded')).toEqual(intents(report('left-field', { truck: '4' })));
});
