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
  /** The name of a truck as its drivers call it. */
  truck: (name: string) => string;
}
