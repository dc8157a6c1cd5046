/** Numbers that stand alone, as crews write them beside trucks, lines and roots. Sentences are ours. */
import { describe, expect, test } from 'vitest';
import { amountsIn } from '../../src/reading/amounts.ts';
import { asPlaceInLine, asTruck } from '../../src/reading/bare-numbers.ts';
import { withDegrees } from '../../src/reading/degrees-said.ts';
import { elementsOf } from '../../src/reading/elements.ts';
import { withHeardNumbers } from '../../src/reading/heard-numbers.ts';
import { namesOf } from '../../src/reading/names.ts';
import { withNumbers } from '../../src/reading/numbers.ts';
import { measured, replaced } from '../../src/reading/said-of.ts';
import type { Element } from '../../src/reading/sign.ts';
import { tokenize } from '../../src/reading/tokens.ts';
import { personById } from '../../src/core/roster.ts';
import { sampleRoster } from '../support/roster.ts';
import { hearing } from './reading-of.ts';

const tokensOf = (text: string) => withNumbers(withHeardNumbers(tokenize(text)));
const elements = (text: string): Element[] => elementsOf(text, tokensOf(text), namesOf(sampleRoster));

const slotsIn = (some: readonly Element[], sort: string): string[] =>
  some.flatMap((element) => (element.is === 'slot' && element.slot.slot === sort ? [element.slot.said] : []));

test.each([
  ["I'm number four to the scale", ['3']],
  ['soy el tercero', ['2']],
  ['seven of us counting me', ['6']],
  ['we were 10, now 6 ahead of me', ['6']],
  ['two ahead', ['2']],
])('"%s" leaves %j trucks ahead', (text, counts) => {
  expect(slotsIn(asPlaceInLine(elements(text)), 'number')).toEqual(counts);
});

describe('a number alone is a truck', () => {
  const from = (who: string) => ({ ...hearing, speaker: personById(sampleRoster, who) ?? null });

  test('for who drives none', () => {
    const said = elements('2 is under the boom');
    expect(slotsIn(asTruck(['loading'], said, from('mateo')), 'truck')).toEqual(['2']);
    expect(slotsIn(asTruck(['loading'], said, from('ben')), 'truck')).toEqual([]);
  });

  test('where a truck is taken', () => {
    expect(slotsIn(asTruck(['take_truck'], elements('I drive 5 from now on'), from('ben')), 'truck')).toEqual(
      ['5'],
    );
  });

  test('never beside a truck that is named', () => {
    const said = elements('truck 3 has 2 tons on');
    expect(slotsIn(asTruck(['loading'], said, from('mateo')), 'truck')).toEqual(['truck 3']);
  });
});

test.each([
  ['stuck it in one, reads 53 and a half', ['53.5']],
  ['ya marca 55 y medio', ['55.5']],
  ['forty nine point five degrees inside', ['49.5']],
  ['took 4 roots at 3:15, 52', ['52']],
])('of "%s" %j is the root', (text, degrees) => {
  expect(slotsIn(withDegrees(elements(text), amountsIn(tokensOf(text))), 'degrees')).toEqual(degrees);
});

test.each([
  ['8 mph behind a combine, 7 ahead', ['8']],
  ['ten behind me', ['10']],
  ['llevo 25 minutos', ['25']],
])('in "%s" %j counts no trucks ahead', (text, aside) => {
  expect(slotsIn(measured(elements(text)), 'number')).toEqual(aside);
});

test('of two places the last is meant', () => {
  expect(slotsIn(replaced(elements('said north 40 and it was the south 80')), 'place')).toEqual(['north 40']);
});

test.each([
  ['pulled up at the 40', ['the 40']],
  ['voy pa la 40', ['la 40']],
  ['the 40 trucks', []],
])('in "%s" the field is %j', (text, places) => {
  expect(slotsIn(elements(text), 'place')).toEqual(places);
});
