/** How far the homeserver's stream of events is safe in the inbox: its last sync token, kept across restarts. */
export interface SyncCursor {
  /** Null = never started. */
  load: () => Promise<string | null>;
  save: (token: string) => Promise<void>;
}
