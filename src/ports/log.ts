export interface Log {
  info: (what: object, message: string) => void;
  warn: (what: object, message: string) => void;
  error: (what: object, message: string) => void;
}
