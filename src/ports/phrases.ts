/** Words of the crew that the bot could make nothing of, as they were written. */
export interface UnreadPhrases {
  /** In the order in which they came; the same words as often as they came. */
  unread: (operation: string) => Promise<string[]>;
}
