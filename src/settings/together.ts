/** Rules on which settings of the environment go together. They look at names only, so that they hold beside other faults. */

export type IsSet = (name: string) => boolean;

/** All of `needed` are missing together, or none is. */
export const allOrNone = (names: readonly string[], needed: readonly string[], isSet: IsSet): string[] => {
  const cause = names.find(isSet);
  if (cause === undefined) return [];
  return needed
    .filter((name) => !isSet(name))
    .map((name) => `${name}: is missing, but ${cause} is set: add the one, or unset the other.`);
};

/** Of two that exclude each other exactly one is wanted; `why` says what each of them is for. */
export const eitherOr = ([one, other]: readonly [string, string], why: string, isSet: IsSet): string[] => {
  if (isSet(one) && isSet(other)) return [`${other}: is set beside ${one}: unset one of the two (${why}).`];
  return isSet(one) || isSet(other) ? [] : [`${one}: is missing: add it, or add ${other} (${why}).`];
};
