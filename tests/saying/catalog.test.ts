import { IntlMessageFormat } from 'intl-messageformat';
import { readdirSync } from 'node:fs';
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

/** The keys of each file of texts in the folder of that language. */
const keysByFile = async (language: string): Promise<[file: string, keys: string[]][]> => {
  const folder = new URL(`../../src/saying/catalog/${language}/`, import.meta.url);
  const files = readdirSync(folder).filter((file) => file !== 'index.ts' && file !== 'formats.ts');
  const keysIn = async (file: string): Promise<string[]> => {
    const exported: unknown = await import(new URL(file, folder).href);
    return Object.values(exported ?? {}).flatMap(Object.keys);
  };
  return Promise.all(files.map(async (file) => [file, await keysIn(file)]));
};

describe.each(LANGUAGES)('the files of the catalog "%s"', (language) => {
  it('share no key: the index would take the text of the later file without a word', async () => {
    const places = (await keysByFile(language)).flatMap(([file, own]) => own.map((key) => ({ key, file })));
    const filesOf = [...Map.groupBy(places, ({ key }) => key)].map(
      ([key, where]) => [key, where.map(({ file }) => file)] as const,
    );
    expect(filesOf.filter(([, files]) => files.length > 1)).toEqual([]);
    expect(filesOf.map(([key]) => key).toSorted()).toEqual(Object.keys(catalogs[language].texts).toSorted());
  });
});

describe('the words of the trade in Spanish', () => {
  it('"toneladas" are short ones, as the crew says them, and metric ones are called so', () => {
    expect(es['unit.tons']).toBe('{tons} toneladas');
    expect(es['help.tons']).toContain('cortas');
    expect(es['unit.tonnes']).toContain('métricas');
  });
});
