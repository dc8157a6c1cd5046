/** What everything that the bot can say has to define; one file a telling in `tellings/`. */
import type { Telling } from '../core/telling.ts';
import type { EpochMs, Minutes } from '../core/units.ts';
import type { Button, Said } from '../ports/chat.ts';
import type { Voice } from './voice.ts';

/** Machine-readable content. */
export type Data = Record<string, unknown>;

/** Writes an instant as ISO 8601 in UTC; passed in because the pure folders have no calendar. */
export type Iso = (atMs: EpochMs) => string;

export type TellingOf<T extends Telling['tell']> = Extract<Telling, { tell: T }>;

export interface TellingKind<T extends Telling['tell']> {
  /** The whole content in one language; its keys are those of `catalog/`. */
  text: (telling: TellingOf<T>, voice: Voice) => string;
  /** Field names are stable, because other programs read them. */
  data: (telling: TellingOf<T>, iso: Iso) => Data;
  buttons: (telling: TellingOf<T>, voice: Voice) => readonly Button[];
  table?: (telling: TellingOf<T>, voice: Voice) => NonNullable<Said['table']>;
  picture?: (telling: TellingOf<T>, voice: Voice) => Said['picture'];
  /** A phone rings. */
  rings: (telling: TellingOf<T>) => boolean;
  /** After this long it is worthless and is not delivered any more; null = it never is. */
  holdsMin: Minutes | null;
}

/** An answer about the present that comes an hour late answers a question that nobody asks any more. */
export const ANSWER_HOLDS_MIN: Minutes = 60;

export const noData = (): Data => ({});
export const noButtons = (): readonly Button[] => [];
export const always = (): boolean => true;
export const never = (): boolean => false;
