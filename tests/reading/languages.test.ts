import { describe, expect, test } from 'vitest';
import { LANGUAGES } from '../../src/core/roster.ts';
import { withNumbers } from '../../src/reading/numbers.ts';
import { tokenize } from '../../src/reading/tokens.ts';
import { allPhrases } from '../../src/reading/vocabulary.ts';
import { words } from '../../src/reading/words/index.ts';
import { KINDS } from '../../src/reading/words/keys.ts';
import { addressed, intents, overheard, report } from './reading-of.ts';

const optionsOf = allPhrases.flatMap(({ parts }) => parts.flatMap(({ options }) => options));

test('a phrase names no kind of words that there is not', () => {
  expect(optionsOf.filter((option) => /[{}]/.test(option))).toEqual([]);
});

test('phrases mix languages where a kind of words stands', () => {
  expect(overheard('second piler abierta')).toEqual(overheard('second piler open'));
  expect(overheard('station closed hasta manana')).toEqual(overheard('station closed till tomorrow'));
  expect(overheard('numero 4 in line')).toEqual(intents(report('joined-line', { ahead: 3 })));
});

describe.each(LANGUAGES)('the language %s', (language) => {
  test('is chosen by each of its names', () => {
    for (const name of words[language].calledBy.split(' ')) {
      expect(addressed(name)).toEqual(intents({ do: 'choose-language', language }));
    }
  });

  test('is told of a new driver by each of its names', () => {
    for (const name of words[language].calledBy.split(' ')) {
      expect(overheard(`add driver Luis ${name}`)).toMatchObject({
        intents: [{ change: { list: 'people', put: { name: 'Luis', language } } }],
      });
    }
  });

  test('has words of every kind', () => {
    expect(KINDS.filter((kind) => words[language].kinds[kind] === '')).toEqual([]);
  });

  test('counts from 1 to 9 and by tens', () => {
    const { from1, tens } = words[language].numbers;
    const digitsOf = (list: string): string[] =>
      withNumbers(tokenize(list.replaceAll(/[ /]/g, ', ')))
        .filter(({ kind }) => kind !== 'break')
        .map(({ text }) => text);
    const first = from1.replaceAll(/\/\S+/g, '');
    expect(digitsOf(first)).toEqual(['1', '2', '3', '4', '5', '6', '7', '8', '9']);
    expect(new Set(digitsOf(tens))).toEqual(new Set(['20', '30', '40', '50', '60', '70', '80', '90']));
  });
});
