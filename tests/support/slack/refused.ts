/** What a method refuses with: `{ok: false, error}`. */
export class Refused extends Error {
  readonly code: string;
  constructor(code: string) {
    super(code);
    this.code = code;
  }
}
