import fc from 'fast-check';
import { distance } from 'fastest-levenshtein';
import { expect, test } from 'vitest';
import { numeralOf, withNumbers } from '../../src/reading/numbers.ts';
import { ordinaryWords } from '../../src/reading/spelling.ts';
import { fold, tokenize } from '../../src/reading/tokens.ts';
import { vocabulary } from '../../src/reading/vocabulary.ts';
import { chatter, overheard } from './reading-of.ts';

const said = [
  'loaded',
  'leaving north 40 full',
  'in line, 14 ahead',
  'second piler open',
  'ticket 48213 79,840 29,320',
  'truck 4 broke down, flat',
  'how long is the line',
  'station closed till 6',
  'stop digging at 1:30, too hot',
  'ya voy cargado',
  'estoy en la fila, como 10 adelante',
  'se descompuso la troca 4',
  'cuantas toneladas van',
  'donde estan todos',
];

const accents: Record<string, string> = { a: 'á', e: 'é', i: 'í', o: 'ó', u: 'ú' };

/** The text with random capitals, accents and spaces; `words` kept out, since they quote the sender. */
const disguised = (text: string, choices: readonly number[]): string =>
  Array.from(text, (letter, i) => {
    switch ((choices[i % choices.length] ?? 0) % 4) {
      case 0:
        return letter.toUpperCase();
      case 1:
        return accents[letter] ?? letter;
      case 2:
        return letter === ' ' ? '   ' : letter;
      default:
        return letter;
    }
  }).join('');

const withoutQuotes = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (key, one: unknown) => (key === 'words' && typeof one === 'string' ? '' : one)),
  );

test('case, accents and spaces change nothing', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...said),
      fc.array(fc.nat(3), { minLength: 5, maxLength: 20 }),
      (text, choices) => {
        expect(withoutQuotes(overheard(disguised(text, choices)))).toEqual(withoutQuotes(overheard(text)));
      },
    ),
    { numRuns: 200 },
  );
});

const slip = (word: string, kind: number, at: number, letter: string): string => {
  const i = at % word.length;
  const [before, after] = [word.slice(0, i), word.slice(i + 1)];
  return [before + after, before + letter + after, before + letter + word.slice(i)][kind % 3] ?? word;
};

/** Long words, each the one word of its phrase that is mistyped. */
const longWords: [string, string][] = [
  ['toneladas', 'cuantas toneladas van'],
  ['descompuso', 'se descompuso la troca 4'],
  ['ticket', 'ticket 48213 79,840 29,320'],
  ['enterado', 'enterado'],
  ['deshacer', 'deshacer'],
  ['everybody', 'where is everybody'],
  ['descargue', 'ya descargue'],
  ['weighed', 'weighed 48213 79840 29320'],
  ['scratch', 'scratch that'],
];

/** Slips that make another word of ours, or one as near to another, are asked about or passed over, not guessed. */
const isClear = (wrong: string, meant: string): boolean =>
  vocabulary.every((word) => word === meant || distance(word, wrong) > 1) && !ordinaryWords.has(wrong);

test('one slip in a long word changes nothing', () => {
  const letters = fc.constantFrom(...'abcdefghijklmnopqrstuvwxyz'.split(''));
  fc.assert(
    fc.property(
      fc.constantFrom(...longWords),
      fc.nat(2),
      fc.nat(20),
      letters,
      ([word, text], kind, at, letter) => {
        const wrong = slip(word, kind, at, letter);
        fc.pre(isClear(wrong, word));
        expect(overheard(text.replace(word, wrong)), wrong).toEqual(overheard(text));
      },
    ),
    { numRuns: 400 },
  );
});

test('no string whatever makes the reader fail', () => {
  const anything = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 80 }),
    fc
      .array(fc.constantFrom(...vocabulary, '14', '10:15', '48213', '79,840', '25.26', ',', '?', '#', 'at'), {
        maxLength: 12,
      })
      .map((list) => list.join(' ')),
  );
  fc.assert(
    fc.property(anything, fc.boolean(), (text, addressed) => {
      expect(['intents', 'unclear', 'chatter']).toContain(overheard(text, { addressed }).found);
    }),
    { numRuns: 500 },
  );
});

test('a long row of little words is read at once', () => {
  for (const words of ['if I leave ', 'the line ', 'how many tons has ', 'ticket 48213 ', 'gross 79840 ']) {
    expect(overheard((words + 'the '.repeat(300)).slice(0, 1900)).found).toBeDefined();
    expect(overheard(words.repeat(200).slice(0, 1900)).found).toBeDefined();
  }
});

test('words that are none of ours are talk', () => {
  // No word of English or Spanish, and none of ours, has these letters in a row.
  const word = fc
    .array(fc.constantFrom(...'xqjzwvk'.split('')), { minLength: 4, maxLength: 9 })
    .map((list) => list.join(''));
  fc.assert(
    fc.property(fc.array(word, { minLength: 1, maxLength: 8 }), (list) => {
      expect(overheard(list.join(' '))).toEqual(chatter);
    }),
  );
});

const grouped = (n: number, mark: string): string => String(n).replace(/\B(?=(\d{3})+$)/g, mark);

test('numbers with separators are the numbers', () => {
  fc.assert(
    fc.property(fc.nat(999_999), fc.constantFrom(',', '.'), (n, mark) => {
      expect(numeralOf(grouped(n, mark)).whole).toBe(n);
      expect(tokenize(`gross ${grouped(n, mark)}, tare`).map(({ text }) => text)).toContain(grouped(n, mark));
    }),
  );
  fc.assert(
    fc.property(
      fc.nat(9999),
      fc.integer({ min: 0, max: 99 }),
      fc.constantFrom(',', '.'),
      (whole, cents, mark) => {
        const text = `${whole}${mark}${String(cents).padStart(2, '0')}`;
        expect(numeralOf(text)).toEqual({
          whole: null,
          decimal: Number(`${whole}.${String(cents).padStart(2, '0')}`),
        });
      },
    ),
  );
});

const spokenNumbers: [string, string][] = [
  ['twelve', '12'],
  ['doce', '12'],
  ['forty eight', '48'],
  ['treinta y ocho', '38'],
  ['eighty six thousand', '86000'],
  ['ochenta y seis mil', '86000'],
  ['two hundred and five', '205'],
  ['doscientos cinco', '205'],
  ['dos mil quinientos', '2500'],
  ['ten fifteen', '10 15'],
  ['no one', 'no one'],
];

test.each(spokenNumbers)('%s is %s', (words, digits) => {
  expect(
    withNumbers(tokenize(words))
      .map(({ text }) => text)
      .join(' '),
  ).toBe(digits);
});

test('folding takes accents, capitals and apostrophes off', () => {
  expect(fold("Cargué Años I'm")).toBe('cargue anos im');
});
