import type { Token } from './tokens.ts';

/**
 * A number as written, in its two possible values: "25,260" is 25260 where pounds are meant and 25.26 where tons are.
 * Mexico writes 25.26, others 25,26; both are taken.
 */
interface Numeral {
  /** Null where it can only be a fraction, such as 25.26. */
  whole: number | null;
  decimal: number;
}

export const numeralOf = (text: string): Numeral => {
  if (/^\d+$/.test(text)) return { whole: Number(text), decimal: Number(text) };
  const separators = text.replace(/\d/g, '');
  const fractionMark = separators.slice(-1);
  const asDecimal = Number(
    text.replace(/[.,]/g, (_mark, at) => (at === text.lastIndexOf(fractionMark) ? '.' : '')),
  );
  const asThousands = Number(text.replace(/[.,]/g, ''));
  const groupsOfThree = /^\d{1,3}(?:([.,])\d{3})(?:\1\d{3})*$/.test(text);
  if (!groupsOfThree) return { whole: null, decimal: asDecimal };
  return { whole: asThousands, decimal: separators.length > 1 ? asThousands : asDecimal };
};

const words = (first: number, step: number, list: string): [string, number][] =>
  list
    .split(' ')
    .flatMap((both, i) => both.split('/').map((word): [string, number] => [word, first + i * step]));

const units = new Map([
  ...words(
    1,
    1,
    'one/uno two/dos three/tres four/cuatro five/cinco six/seis seven/siete eight/ocho nine/nueve',
  ),
  ['zero', 0] as const,
  ['cero', 0] as const,
]);
const teens = new Map([
  ...words(10, 1, 'ten/diez eleven/once twelve/doce thirteen/trece fourteen/catorce fifteen/quince'),
  ...words(16, 1, 'sixteen/dieciseis seventeen/diecisiete eighteen/dieciocho nineteen/diecinueve'),
  ...words(
    21,
    1,
    'veintiuno veintidos veintitres veinticuatro veinticinco veintiseis veintisiete veintiocho',
  ),
  ['veintinueve', 29] as const,
]);
const tens = new Map([
  ...words(20, 10, 'twenty/veinte thirty/treinta forty/fourty/cuarenta fifty/cincuenta sixty/sesenta'),
  ...words(70, 10, 'seventy/setenta eighty/ochenta ninety/noventa'),
]);
const hundreds = new Map([
  ...words(100, 100, 'cien/ciento doscientos trescientos cuatrocientos quinientos seiscientos setecientos'),
  ...words(800, 100, 'ochocientos novecientos'),
]);
const ordinals = new Map(
  words(1, 1, 'first/primera/primer second/segunda/segundo third/tercera/tercer fourth/cuarta'),
);
const spanishTens = /^(veinte|[a-z]+nta)$/;

export const numberWords: readonly string[] = [
  ...[units, teens, tens, hundreds, ordinals].flatMap((map) => [...map.keys()]),
  ...['hundred', 'thousand', 'mil'],
];

interface Spoken {
  value: number;
  /** How many words it took. */
  length: number;
}

const belowHundred = (said: readonly string[]): Spoken | null => {
  const [first = '', second = '', third = ''] = said;
  const ten = tens.get(first);
  if (ten === undefined) {
    const value = teens.get(first) ?? units.get(first);
    return value === undefined ? null : { value, length: 1 };
  }
  const unit = units.get(second) ?? 0;
  if (unit > 0) return { value: ten + unit, length: 2 };
  const afterY = second === 'y' && spanishTens.test(first) ? (units.get(third) ?? 0) : 0;
  return afterY > 0 ? { value: ten + afterY, length: 3 } : { value: ten, length: 1 };
};

const belowThousand = (said: readonly string[]): Spoken | null => {
  const [first = '', second = ''] = said;
  const ofHundred = second === 'hundred' ? (units.get(first) ?? null) : null;
  const hundred = ofHundred === null ? hundreds.get(first) : ofHundred * 100;
  if (hundred === undefined) return belowHundred(said);
  const used = ofHundred === null ? 1 : 2;
  const joined = said[used] === 'and' ? used + 1 : used;
  const rest = belowHundred(said.slice(joined));
  return rest === null
    ? { value: hundred, length: used }
    : { value: hundred + rest.value, length: joined + rest.length };
};

const isThousand = (word: string | undefined): boolean => word === 'thousand' || word === 'mil';

const spoken = (said: readonly string[]): Spoken | null => {
  const high = said[0] === 'mil' ? { value: 1, length: 0 } : belowThousand(said);
  if (high === null || !isThousand(said[high.length])) return high;
  const low = belowThousand(said.slice(high.length + 1));
  const value = high.value * 1000 + (low?.value ?? 0);
  return { value, length: high.length + 1 + (low?.length ?? 0) };
};

/** "No one" is nobody, and the English "once" is no eleven: those words are left as they are. */
const isOrdinaryWord = (word: string, before: string | undefined): boolean =>
  (word === 'one' && before === 'no') ||
  (word === 'once' && !/^(las|hace|como|hay|troca|camion|en)$/.test(before ?? ''));

/** Number words turned into numbers: "forty eight" becomes 48, "ochenta y seis mil" 86000, "second" the ordinal 2. */
export const withNumbers = (tokens: readonly Token[]): Token[] => {
  const out: Token[] = [];
  let i = 0;
  for (let token = tokens[i]; token !== undefined; token = tokens[i]) {
    const said = tokens.slice(i, i + 9).map((t) => (t.kind === 'word' ? t.text : ''));
    const ordinal = ordinals.get(said[0] ?? '');
    const number = isOrdinaryWord(token.text, tokens[i - 1]?.text) ? null : spoken(said);
    const length = number?.length ?? 1;
    const end = tokens[i + length - 1]?.end ?? token.end;
    if (ordinal !== undefined) out.push({ ...token, kind: 'ordinal', text: String(ordinal) });
    else out.push(number === null ? token : { ...token, kind: 'number', text: String(number.value), end });
    i += length;
  }
  return out;
};
