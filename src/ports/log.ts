/** The log of the program: `what` are its fields, `message` is for people. */
export interface Log {
  info: (what: object, message: string) => void;
  warn: (what: object, message: string) => void;
  error: (what: object, message: string) => void;
}

/** A line of an adapter, which knows no fields; the program adds the platform. */
export type LogLine = (level: 'info' | 'warn' | 'error', message: string) => void;
