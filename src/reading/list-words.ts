import type { Roster } from '../core/roster.ts';
import type { Token } from './tokens.ts';

export interface Words {
  text: string;
  tokens: readonly Token[];
  roster: Roster;
}

export const ADD = /^(add|new|agrega|agregar|anade|anadir|nuevo|nueva)$/;
export const REMOVE = /^(remove|delete|quita|quitar|borra|borrar|elimina)$/;
export const ARTICLE = /^(a|an|the|un|una|al|el|la)$/;

const sorts = {
  truck: /^(truck|troca|camion)$/,
  field: /^(field|campo|lote|fil)$/,
  station: /^(station|estacion)$/,
  driver: /^(driver|chofer|conductor|manejador)$/,
  foreman: /^(foreman|capataz|mayordomo)$/,
  grower: /^(grower|owner|productor|dueno)$/,
  'digger-operator': /^(digger|lifter|sacadora|cosechadora)$/,
  'topper-operator': /^(topper|defoliator|deshojadora|topeadora)$/,
  person: /^(person|hand|worker|persona|trabajador)$/,
} as const;
export type Sort = keyof typeof sorts;

const allSorts = [
  'truck',
  'field',
  'station',
  'driver',
  'foreman',
  'grower',
  'digger-operator',
  'topper-operator',
  'person',
] as const;

export const sortOf = (word: string | undefined): Sort | null =>
  allSorts.find((sort) => sorts[sort].test(word ?? '')) ?? null;

export const listWords: readonly string[] =
  `add new agrega agregar anade nuevo nueva remove delete quita quitar borra elimina driver chofer conductor foreman
  capataz mayordomo grower digger topper operator operador person persona truck troca camion field campo lote station
  estacion limit limite acres acre hectares hectareas spanish english espanol ingles air line fila aire tare tara
  minutes minutos`.split(/\s+/);

/** Where the words of a new name end. */
const afterName =
  /^(truck|troca|camion|spanish|english|espanol|ingles|limit|limite|tare|tara|to|at|@|,|speaks|habla)$/;
const acreage = /^(acres?|ac|hectares?|hectareas|ha)$/;
const MAX_NAME_WORDS = 4;

/** The words of a new name, as written, from this token on; null where there are none, or a sentence. */
export const newName = ({ text, tokens }: Words, at: number): { name: string; end: number } | null => {
  const stop = tokens.findIndex(
    (token, i) =>
      i >= at &&
      (afterName.test(token.text) || (token.kind === 'number' && acreage.test(tokens[i + 1]?.text ?? ''))),
  );
  const end = stop === -1 ? tokens.length : stop;
  const [first, last] = [tokens[at], tokens[end - 1]];
  if (first === undefined || last === undefined || end <= at || end - at > MAX_NAME_WORDS) return null;
  return { name: text.slice(first.start, last.end), end };
};
