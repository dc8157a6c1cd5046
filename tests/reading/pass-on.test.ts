import { expect, test } from 'vitest';
import type { Intent } from '../../src/core/intent.ts';
import { personById } from '../../src/core/roster.ts';
import { sampleRoster } from '../support/roster.ts';
import { intents, overheard } from './reading-of.ts';

const speaker = personById(sampleRoster, 'ruth') ?? null;
const said = (text: string, addressed: boolean) => overheard(text, { speaker, addressed });
const passOn = (to: readonly string[] | 'everybody', words: string, soundsLikeOrder = false): Intent => ({
  do: 'pass-on',
  to,
  words,
  soundsLikeOrder,
});

const cases: [string, Intent][] = [
  ['tell everybody: start 5:00 at South 80', passOn('everybody', 'start 5:00 at South 80')],
  ['tell everyone we start at 5', passOn('everybody', 'we start at 5')],
  ['Please tell the crew that lunch is here', passOn('everybody', 'lunch is here')],
  ['tell them: stop digging', passOn('everybody', 'stop digging', true)],
  ['tell Mateo dig again', passOn(['mateo'], 'dig again', true)],
  ['tell mateo and ana: come to the shop', passOn(['mateo', 'ana'], 'come to the shop')],
  ['tell truck 3 her lights are out', passOn(['carla'], 'her lights are out')],
  ['diles a todos que empezamos a las 5', passOn('everybody', 'empezamos a las 5')],
  ['diles que paren de sacar', passOn('everybody', 'paren de sacar', true)],
  ['dile a Ana que venga', passOn(['ana'], 'venga')],
  ['avísales a todos: mañana a las 5', passOn('everybody', 'mañana a las 5')],
];

test.each(cases)('%s', (text, expected) => {
  expect(said(text, true)).toEqual(intents(expected));
});

test.each([
  'tell me how long the line is',
  'tell everybody',
  'tell the station we are late',
  'I told everybody: start at 5',
  'did you tell everybody: start at 5',
])('nothing is passed on: %s', (text) => {
  expect(JSON.stringify(said(text, true))).not.toContain('pass-on');
});
