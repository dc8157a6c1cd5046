/** Which settings of the environment go together. Only names are checked, so that this works beside other faults. */

export type IsSet = (name: string) => boolean;

/** If any of `names` is set, all of `needed` must be. */
export const allOrNone = (names: readonly string[], needed: readonly string[], isSet: IsSet): string[] => {
  const cause = names.find(isSet);
  if (cause === undefined) return [];
  return needed
    .filter((name) => !isSet(name))
    .map((name) => `${name}: is missing, but ${cause} is set: add the first, or unset the second.`);
};

/** Exactly one of the two must be set; `why` says what each is for. */
export const eitherOr = ([one, other]: readonly [string, string], why: string, isSet: IsSet): string[] => {
  if (isSet(one) && isSet(other)) return [`${other}: is set beside ${one}: unset one of the two (${why}).`];
  return isSet(one) || isSet(other) ? [] : [`${one}: is missing: add it, or add ${other} (${why}).`];
};
