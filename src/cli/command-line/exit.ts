/**
 * An exit code that is the answer itself: all there was to say has been written.
 */
export class Exit extends Error {
  readonly code: number;
  constructor(code: number) {
    super(`ends with ${code}`);
    this.code = code;
  }
}
