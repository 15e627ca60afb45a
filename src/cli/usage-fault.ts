/** The command line asks for something that cannot be: one line to the reader, exit status 2. */
export class UsageFault extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'UsageFault';
  }
}
