import type { Intent, ListChangeAsk, Unclear } from '../core/intent.ts';
import type { Roster, TruckId } from '../core/roster.ts';
import { listed, wordSet } from './every-language.ts';
import { newName } from './new-name.ts';
import type { Words } from './new-name.ts';
import { acresOf, isLimitWord, limitF, piecesFrom } from './list-pieces.ts';
import type { Pieces } from './list-pieces.ts';
import { trucksNumbered } from './truck-numbers.ts';
import type { Token } from './tokens.ts';
import { SORTS } from './words/keys.ts';
import type { Sort } from './words/keys.ts';

/** Changes of the lists: "add driver Luis truck 4 spanish", "truck 3 limit 86000", "remove field west 20". */
const adding = wordSet(({ lists }) => lists.add);
const removing = wordSet(({ lists }) => lists.remove);
const articles = wordSet(({ lists }) => lists.article);
const operators = wordSet(({ lists }) => lists.operator);
const sortOfWord: ReadonlyMap<string, Sort> = new Map(
  SORTS.flatMap((sort) => listed(({ lists }) => lists.sorts[sort]).map((word) => [word, sort])),
);

type Asked = { intent: Intent } | { unclear: Unclear } | null;

const change = (asked: ListChangeAsk): Asked => ({ intent: { do: 'change-list', change: asked } });

const unknown = (sort: 'truck' | 'field' | 'station' | 'person', said: string, roster: Roster): Asked => {
  const { trucks, fields, stations, people } = roster;
  const list = { truck: trucks, field: fields, station: stations, person: people }[sort];
  return { unclear: { problem: 'unknown-name', sort, said, known: list.map(({ name }) => name) } };
};

/** The truck named; undefined where none is. */
const truckOf = ({ trucks }: Pieces): { id: TruckId | null; said: string } | undefined => {
  const [slot] = trucks;
  const [named] = slot?.trucks ?? [];
  return slot === undefined ? undefined : { id: named?.ids[0] ?? null, said: slot.said };
};

const tareOf = ({ keys, weightsLb }: Pieces) => {
  const [min, max] = weightsLb.slice(-2);
  return keys.has('tare') && min !== undefined && max !== undefined ? { min, max } : null;
};

const slug = (name: string): string => name.toLowerCase().replace(/\s+/g, '-');

const addPerson = (name: string, sort: Sort, pieces: Pieces, { text, roster }: Words): Asked => {
  const truck = truckOf(pieces);
  if (truck?.id === null) return unknown('truck', truck.said, roster);
  const role = sort === 'person' || sort === 'truck' || sort === 'field' || sort === 'station' ? null : sort;
  const address = /<@[^>\s]+>|@[\w.:-]+/.exec(text)?.[0] ?? null;
  return change({
    list: 'people',
    put: { name, role, truck: truck?.id ?? null, language: pieces.language, address },
  });
};

const addEntry = (sort: Sort, name: string, pieces: Pieces, words: Words): Asked => {
  const { roster } = words;
  switch (sort) {
    case 'truck': {
      const id = trucksNumbered(name, roster)[0] ?? slug(name);
      const grossLimitLb = pieces.keys.has('limit') ? (pieces.weightsLb[0] ?? null) : null;
      return change({ list: 'trucks', put: { id, grossLimitLb, usualTareLb: tareOf(pieces) } });
    }
    case 'field':
      return change({
        list: 'fields',
        put: { name, acres: acresOf(pieces), station: pieces.places[0]?.stations[0] ?? null },
      });
    case 'station':
      return change({
        list: 'stations',
        put: { name, airLimitF: limitF(pieces, roster.units === 'metric') },
      });
    case 'driver':
    case 'foreman':
    case 'grower':
    case 'digger-operator':
    case 'topper-operator':
    case 'person':
      return addPerson(name, sort, pieces, words);
  }
};

const add = (words: Words, at: number): Asked => {
  const sort = sortOfWord.get(words.tokens[at]?.text ?? '') ?? null;
  const isOperator = operators.has(words.tokens[at + 1]?.text ?? '');
  const named = sort === null ? null : newName(words, at + (isOperator ? 2 : 1));
  if (sort === null || named === null) return null;
  const pieces = piecesFrom(words.tokens, named.end, words.roster);
  const isWhole = pieces.isWhole || words.text.includes('@');
  return isWhole ? addEntry(sort, named.name, pieces, words) : null;
};

/** A removal that names one entry of a list and says nothing else. */
const removeNamed = (pieces: Pieces, roster: Roster): Asked => {
  const [truck, person, place] = [truckOf(pieces), pieces.people[0], pieces.places[0]];
  if (truck !== undefined) {
    return truck.id === null
      ? unknown('truck', truck.said, roster)
      : change({ list: 'trucks', remove: truck.id });
  }
  if (person !== undefined) return change({ list: 'people', remove: person.id });
  const [field, station] = [place?.fields[0], place?.stations[0]];
  if (field !== undefined) return change({ list: 'fields', remove: field });
  if (station !== undefined) return change({ list: 'stations', remove: station });
  return place === undefined ? null : unknown('field', place.said, roster);
};

const remove = (words: Words, at: number): Asked => {
  const { tokens, roster } = words;
  const sort = sortOfWord.get(tokens[at]?.text ?? '') ?? null;
  const whole = piecesFrom(tokens, at, roster);
  const pieces =
    sort === null || sort === 'truck' || whole.isWhole ? whole : piecesFrom(tokens, at + 1, roster);
  const found = pieces.trucks.length + pieces.people.length + pieces.places.length;
  if (pieces.isWhole && found === 1 && pieces.numbers.length === 0) return removeNamed(pieces, roster);
  const named = sort === null || sort === 'truck' || found > 0 ? null : newName(words, at + 1);
  if (named === null) return null;
  return unknown(sort === 'field' || sort === 'station' ? sort : 'person', named.name, roster);
};

const stationLimit = (pieces: Pieces, roster: Roster): Asked => {
  const airLimitF = limitF(pieces, roster.units === 'metric');
  const [named] = pieces.places[0]?.stations ?? [];
  const only = pieces.keys.has('air') && roster.stations.length === 1 ? roster.stations[0] : undefined;
  const station = roster.stations.find(({ id }) => id === named) ?? only;
  return airLimitF === null || station === undefined
    ? null
    : change({ list: 'stations', put: { name: station.name, airLimitF } });
};

/** "Truck 3 limit 86000", "truck 3 tare 28000 to 32000", "limit north station 57", "line limit 45 min". */
const limit = ({ tokens, roster }: Words): Asked => {
  if (!tokens.some(({ text }) => isLimitWord(text))) return null;
  const pieces = piecesFrom(tokens, 0, roster);
  const { keys, weightsLb, numbers } = pieces;
  if (!pieces.isWhole || !(keys.has('limit') || keys.has('tare'))) return null;
  const truck = truckOf(pieces);
  const usualTareLb = tareOf(pieces);
  const grossLimitLb = keys.has('limit') && usualTareLb === null ? (weightsLb[0] ?? null) : null;
  if (truck !== undefined) {
    if (grossLimitLb === null && usualTareLb === null) return null;
    if (truck.id === null) return unknown('truck', truck.said, roster);
    return change({ list: 'trucks', put: { id: truck.id, grossLimitLb, usualTareLb } });
  }
  const lineLimitMin = Number(numbers[0] ?? NaN);
  const isLine = keys.has('limit') && keys.has('line') && Number.isInteger(lineLimitMin);
  return isLine ? change({ list: 'limits', put: { lineLimitMin } }) : stationLimit(pieces, roster);
};

/** A change of the lists, where the message is one and nothing else. */
export const readListChange = (text: string, all: readonly Token[], roster: Roster): Asked => {
  const last = all.findLastIndex(({ kind }) => kind !== 'break');
  const tokens = all.slice(0, last + 1);
  const words: Words = { text, tokens, roster };
  const [first = '', second = ''] = tokens.map((token) => token.text);
  const at = articles.has(second) ? 2 : 1;
  if (adding.has(first)) return add(words, at);
  return removing.has(first) ? remove(words, at) : limit(words);
};
