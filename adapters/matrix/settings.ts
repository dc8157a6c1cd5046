export interface MatrixSettings {
  /** Base address of the client-server API, such as "https://matrix.example.org". */
  homeserver: string;
  /** The bot's own full id, such as "@bell:example.org". */
  user: string;
  /** Used once: the resulting session is kept in `directory`. A token must belong to a device of its own. */
  login: { by: 'password'; password: string } | { by: 'token'; token: string };
  /**
   * Where the session (device, token) and the encryption keys are kept together: one is useless without the others.
   * Back it up as a whole; never run a second bot on a copy.
   */
  directory: string;
  /** Off: the bot can't read encrypted rooms, and says so there. */
  encryption: boolean;
  /** Whose invitations are accepted: full ids ("@ana:example.org") and servers ("example.org"). */
  invitesFrom: readonly string[];
  /** How long to wait for the key of a message before asking its sender to send it again, in ms. */
  keyWaitMs: number;
}
