import { expect, test } from 'vitest';
import type { Intent } from '../../src/core/intent.ts';
import { addressed, at, chatter, intents, notUnderstood, overheard } from './reading-of.ts';

const line = (ahead: number, station: string | null = null): Intent => ({
  do: 'see-line',
  station,
  ahead,
  atMs: null,
});
const pilers = (open: number | null, down: number | 'all' | null, station: string | null = null): Intent => ({
  do: 'see-pilers',
  station,
  open,
  down,
  atMs: null,
});
const station = (open: boolean, said: Partial<Extract<Intent, { do: 'report-station' }>> = {}): Intent => ({
  do: 'report-station',
  station: null,
  open,
  untilMs: null,
  atMs: null,
  ...said,
});
const turnedAway = (said: Partial<Extract<Intent, { do: 'report-turned-away' }>> = {}): Intent => ({
  do: 'report-turned-away',
  station: null,
  truck: null,
  words: null,
  atMs: null,
  ...said,
});
const root = (temperatureF: number, said: Partial<Extract<Intent, { do: 'measure-root' }>> = {}): Intent => ({
  do: 'measure-root',
  field: null,
  station: null,
  temperatureF,
  atMs: null,
  ...said,
});
const crown = (sound: boolean, field: string | null = null): Intent => ({
  do: 'check-crown',
  field,
  sound,
  atMs: null,
});

const cases: [string, Intent][] = [
  ['line is empty', line(0)],
  ["line's empty", line(0)],
  ['no line', line(0)],
  ['no line at north station', line(0, 'north-station')],
  ['no hay fila', line(0)],
  ['14 in line', line(14)],
  ['line is 14', line(14)],
  ['line is about fourteen trucks', line(14)],
  ['the line is down to 5', line(5)],
  ['line down to 3 trucks', line(3)],
  ['12 ahead of me', line(12)],
  ['hay 14 trocas en la fila', line(14)],
  ['como 12 trocas en la fila', line(12)],

  ['second piler open', pilers(2, null)],
  ['the second piler just opened', pilers(2, null)],
  ['piler 2 is open', pilers(2, null)],
  ['two pilers', pilers(2, null)],
  ['only one piler', pilers(1, null)],
  ['segunda piler abierta', pilers(2, null)],
  ['piler down', pilers(null, 1)],
  ['piler 2 down', pilers(null, 1)],
  ['two pilers down', pilers(null, 2)],
  ['all pilers down', pilers(null, 'all')],
  ['all of the pilers are broke down', pilers(null, 'all')],
  ['no piler is running', pilers(null, 'all')],
  ['todas las apiladoras paradas', pilers(null, 'all')],
  ['ninguna apiladora jala', pilers(null, 'all')],
  ['north station piler down', pilers(null, 1, 'north-station')],
  ['se descompuso la piler', pilers(null, 1)],
  ['piler back up', pilers(null, 0)],
  ['la piler ya quedo', pilers(null, 0)],

  ['station open', station(true)],
  ['north station is open', station(true, { station: 'north-station' })],
  ['la estacion ya abrio', station(true)],
  ['station closed', station(false)],
  ['station closed till 6', station(false, { untilMs: at('18:00') })],
  ['station closed at 10:15', station(false, { atMs: at('10:15') })],
  ['station opens at 6', station(false, { untilMs: at('18:00') })],
  ['they are not taking loads', station(false)],
  [
    'north station is not taking any more beets till 6',
    station(false, { station: 'north-station', untilMs: at('18:00') }),
  ],
  ['ya no están recibiendo', station(false)],
  ['cerraron la estacion hasta las 6', station(false, { untilMs: at('18:00') })],

  ['they turned me away', turnedAway()],
  ['they rejected my load', turnedAway()],
  ["they won't take my load, too hot", turnedAway({ words: 'too hot' })],
  ['station is turning loads away', turnedAway()],
  ['turned away, too warm', turnedAway({ words: 'too warm' })],
  ['the station turned us away', turnedAway()],
  [
    'truck 3 was turned away at north station, too hot',
    turnedAway({ station: 'north-station', truck: '3', words: 'too hot' }),
  ],
  ['Ana got turned away', turnedAway({ truck: '1' })],
  ['me rechazaron la carga por caliente', turnedAway({ words: 'por caliente' })],
  ['no nos recibieron', turnedAway()],
  ['estan regresando trocas', turnedAway()],

  ['root 57 at north 40', root(57, { field: 'north-40' })],
  ['root temp is 57.5 degrees', root(57.5)],
  ['root 57 at 10:15', root(57, { atMs: at('10:15') })],
  ['root at 57 at north station', root(57, { station: 'north-station' })],
  ['raiz a 57 grados en el north 40', root(57, { field: 'north-40' })],
  // 14 x 1.8 + 32 = 57.2
  ['root 14 c at north 40', root(57.2, { field: 'north-40' })],
  ['crowns are fine at north 40', crown(true, 'north-40')],
  ['crowns frozen at south 80', crown(false, 'south-80')],
  ['coronas bien en el north 40', crown(true, 'north-40')],
];

test.each(cases)('%s', (text, expected) => {
  expect(overheard(text)).toEqual(intents(expected));
});

test.each([
  'they turned me away from the bar last night',
  'he turned away and left',
  'my card got rejected',
  'they rejected my application',
  'me regresaron el cambio',
])('nobody is told that loads are turned away: %s', (text) => {
  expect(overheard(text)).toEqual(chatter);
  expect(addressed(text)).toEqual(notUnderstood);
});

test('a root temperature that no root has is asked about', () => {
  const problem = { problem: 'which-amount', said: '570' };
  expect(overheard('root 570 at north 40')).toEqual({ found: 'unclear', problem });
});
