import { IntlMessageFormat } from 'intl-messageformat';
import { describe, expect, it } from 'vitest';
import { en } from '../../src/saying/catalog/en/index.ts';
import type { Key } from '../../src/saying/catalog/en/index.ts';
import { es } from '../../src/saying/catalog/es/index.ts';

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

describe('the two catalogs', () => {
  it('have the same keys', () => {
    expect(Object.keys(es).toSorted()).toEqual(Object.keys(en).toSorted());
  });

  it.each(keys)('%s: the same arguments', (key) => {
    const [english, spanish] = [parsed(en[key], 'en-US'), parsed(es[key], 'es-MX')].map(
      (elements) => new Set(argumentsOf(elements)),
    );
    expect(spanish).toEqual(english);
  });

  it.each(keys)('%s: something in both, and not by chance the same sentence', (key) => {
    for (const text of [en[key], es[key]]) expect(text.trim()).not.toBe('');
    if (/[a-z]{3,} [a-z]{3,} [a-z]{3,}/.test(en[key])) expect(es[key]).not.toBe(en[key]);
  });
});

describe('the words of the trade in Spanish', () => {
  it('"toneladas" without a word beside it would be metric', () => {
    expect(es['unit.tons']).toContain('cortas');
    expect(es['unit.tonnes']).toContain('métricas');
  });
});
