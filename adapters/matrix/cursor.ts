/** How far the homeserver's events are stored in the inbox: the last sync token, kept across restarts. */
export interface SyncCursor {
  /** Null = never started. */
  load: () => Promise<string | null>;
  save: (token: string) => Promise<void>;
}
