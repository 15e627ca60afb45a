/** What a script is told; written down in the README and never renumbered. */
export const EXIT = {
  /** Answered, and the answer is yes, or it was no yes-or-no question. */
  yes: 0,
  /** Answered, and the answer is no: falls short, or a caution says stop. */
  no: 1,
  /** The input or the command line is wrong. */
  wrongInput: 2,
  /** The network has no steady answer. */
  noAnswer: 3,
  /** A fault of the program's own. */
  fault: 70,
  /** Answered, and the answer could not be written; EX_IOERR of BSD's sysexits.h. */
  notWritten: 74,
} as const;

export type ExitStatus = (typeof EXIT)[keyof typeof EXIT];
