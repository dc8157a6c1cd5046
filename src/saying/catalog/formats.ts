/** Each has a text `reason.…` in the catalogs. */
export const REASONS = ['mud', 'rain', 'heat', 'frost', 'agreed'] as const;
export type Reason = (typeof REASONS)[number];

/** How a language writes what is not words: kept beside its texts, one file a language. */
export interface Formats {
  /** BCP 47 tag, for the plural rules of its texts. */
  locale: string;
  /** RFC 3066 tag of its words in alerts for other systems. */
  alertTag: string;
  /** Before and after noon, as written behind a clock time; null = the clock has 24 hours. */
  halves: readonly [string, string] | null;
  /** Between groups of three digits, and before the decimals. */
  marks: { thousands: string; decimals: string };
  /** `month` 1-12. */
  date: (month: number, day: number) => string;
  /** A clock time of another day. */
  onDate: (clock: string, date: string) => string;
  /** The text with its articles as the hours need them that are put into it: "a la {time}" for 1:10, "a las {time}" for 2:10. */
  articles: (text: string, values: Readonly<Record<string, string | number>>) => string;
  /** Common reasons to stop or to dig on, as people write them: small letters, no accents. Others are quoted. */
  reasons: Readonly<Record<Reason, readonly string[]>>;
  /** The name of a truck as its drivers call it. */
  truck: (name: string) => string;
}
