/** Kinds of words that a phrase may take in any language: "piler abierta". */
export const KINDS = [
  'number',
  'in',
  'line',
  'piler',
  'running',
  'stopped',
  'only',
  'acres',
  'digger',
  'topper',
  'station',
  'closed',
  'until',
  'reopening',
  'tons',
  'loads',
  'of',
  'tell',
  'outlook',
  'for',
  'tomorrow',
  'people',
  'trucks',
  'fields',
  'stations',
  'limits',
  'erase',
  'that',
  'was',
  'not',
  'speak',
] as const;
export type Kind = (typeof KINDS)[number];

/** What an entry of the lists may be called. */
export const SORTS = [
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
export type Sort = (typeof SORTS)[number];

/** What a change of the lists may say of an entry. */
export const LIST_KEYS = ['limit', 'tare', 'line', 'air', 'acres', 'hectares', 'celsius'] as const;
export type ListKey = (typeof LIST_KEYS)[number];
