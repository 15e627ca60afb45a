/**
 * What a terminal would obey rather than show: control characters and marks that turn the direction of writing. A
 * title out of a stranger's file must not be able to clear a screen or hide a figure.
 */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const OBEYED = /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069\u2028\u2029\ufeff]/g;

export function plain(text: string): string {
  return text.replace(/[\t\r\n]+/g, ' ').replace(OBEYED, '\ufffd');
}
