import { IntlMessageFormat } from 'intl-messageformat';
import { describe, expect, it } from 'vitest';
import { LANGUAGES } from '../../src/core/roster.ts';
import { en } from '../../src/saying/catalog/en/index.ts';
import type { Key } from '../../src/saying/catalog/en/index.ts';
import { es } from '../../src/saying/catalog/es/index.ts';
import { catalogs } from '../../src/saying/catalog/index.ts';
import { clockTime, numeral } from '../../src/saying/voice.ts';

type Parsed = ReturnType<IntlMessageFormat['getAst']>;

const parsed = (text: string, locale: string): Parsed =>
  new IntlMessageFormat(text, locale, undefined, { ignoreTag: true }).getAst();

/** Names of the arguments, with their sort where it is not a plain one ("count plural"). */
const argumentsOf = (elements: Parsed): string[] =>
  elements.flatMap((element) => {
    if ('options' in element) {
      const inner = Object.values(element.options).flatMap(({ value }) => argumentsOf(value));
      return [`${element.value} choice`, ...inner];
    }
    // A literal's sort is 0, that of anything filled in is more (the parser's TYPE).
    const sort: number = element.type;
    return sort > 0 && 'value' in element ? [element.value] : [];
  });

const keys = Object.keys(en).filter((key): key is Key => key in en);
const others = LANGUAGES.filter((language) => language !== 'en');

describe.each(others)('the catalog %s beside the English one', (language) => {
  const { texts, formats } = catalogs[language];

  it('has the same keys', () => {
    expect(Object.keys(texts).toSorted()).toEqual(Object.keys(en).toSorted());
  });

  it.each(keys)('%s: the same arguments', (key) => {
    const [english, other] = [parsed(en[key], 'en-US'), parsed(texts[key], formats.locale)].map(
      (elements) => new Set(argumentsOf(elements)),
    );
    expect(other).toEqual(english);
  });

  it.each(keys)('%s: something in both, and not by chance the same sentence', (key) => {
    for (const text of [en[key], texts[key]]) expect(text.trim()).not.toBe('');
    if (/[a-z]{3,} [a-z]{3,} [a-z]{3,}/.test(en[key])) expect(texts[key]).not.toBe(en[key]);
  });

  // RFC 3066, 2.1: a subtag of letters, then more of letters and digits, 8 at most in each.
  it('has a tag for alerts that is one of RFC 3066, and begins with the language', () => {
    expect(formats.alertTag).toMatch(/^[A-Za-z]{1,8}(-[A-Za-z0-9]{1,8})*$/);
    expect(formats.alertTag.split('-')[0]).toBe(language);
  });
});

describe('what is no words', () => {
  it('is written with the marks of the language', () => {
    expect(numeral({ thousands: '.', decimals: ',' }, -1_234_567.5, 2)).toBe('-1.234.567,50');
    expect(numeral(catalogs.en.formats.marks, 79_840, 0)).toBe('79,840');
  });

  it.each([
    [0, 5, '0:05', '12:05 AM'],
    [12, 0, '12:00', '12:00 PM'],
    [14, 30, '14:30', '2:30 PM'],
  ])('the clock at %i:%i runs to 24 or twice to 12', (hour, minute, full, halved) => {
    expect(clockTime(null, hour, minute)).toBe(full);
    expect(clockTime(['AM', 'PM'], hour, minute)).toBe(halved);
  });
});

describe('the words of the trade in Spanish', () => {
  it('"toneladas" without a word beside it would be metric', () => {
    expect(es['unit.tons']).toContain('cortas');
    expect(es['unit.tonnes']).toContain('métricas');
  });
});
