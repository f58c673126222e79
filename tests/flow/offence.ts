/** Something in the code that goes against the design: where, what, and how to mend it. */
export interface Offence {
  file: string;
  line: number;
  what: string;
  mend: string;
}
