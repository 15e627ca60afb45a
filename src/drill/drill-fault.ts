/** What a reader asked of the drill that is not to be had; the message says what is. */
export class DrillFault extends Error {
  override readonly name = 'DrillFault';
}
