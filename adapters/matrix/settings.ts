export interface MatrixSettings {
  /** Base address of the client-server API, such as "https://matrix.example.org". */
  homeserver: string;
  /** The bot's own full id, such as "@bell:example.org". */
  user: string;
  /** Used once: the session that comes of it is kept in `directory`. A token must be one of a device of its own. */
  login: { by: 'password'; password: string } | { by: 'token'; token: string };
  /**
   * Where the session (device, token) and the encryption keys are kept, together: one without the others is void.
   * Back it up as a whole; never copy it to a second running bot.
   */
  directory: string;
  /** Off: the bot can't read encrypted rooms, and says so there. */
  encryption: boolean;
  /** Whose invitations are taken: full ids ("@ana:example.org") and servers ("example.org"). */
  invitesFrom: readonly string[];
  /** How long the key of a message may still arrive before its sender is told that it can't be read, in ms. */
  keyWaitMs: number;
}
