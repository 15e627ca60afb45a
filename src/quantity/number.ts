/**
 * The numbers that people write before a unit: `250`, `4,300`, `.5`, `1e3`, `3/8`, `1-1/2`, `1 1/2`, `1½`.
 * A comma sets off thousands and nothing else: `1,5` could be read as fifteen or as one and a half, so it is refused.
 */
export type NumberReading =
  | { value: number; rest: string; text: string }
  | { fault: 'none' }
  | { fault: 'comma'; text: string; decimal: string; rest: string }
  | { fault: 'zero_denominator' | 'too_large' | 'unclear'; text: string };

const VULGAR: Record<string, string> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const PLAIN =
  /^(?:\d{1,3}(?:,\d{3})+(?:\.\d*)?|\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+(?![\w.]|,\d)|e[+-]?\d+(?=[a-z]))?/i;
const FRACTION = /^(?:(\d+)(?:\s*-\s*|\s+))?(\d+)\s*\/\s*(\d+)/;
/** What is left over after a number when the number was more than we read of it. */
const MORE_NUMBER = /^\s*[-+.,:/]?\s*\d/;

function expandVulgar(text: string): string {
  return text.replace(/\s*([½¼¾⅓⅔⅛⅜⅝⅞])/g, (_, sign: string) => ` ${VULGAR[sign]}`).trim();
}

export function readNumber(input: string): NumberReading {
  const text = expandVulgar(input.replace(/[\u00a0\u2009\u202f]/g, ' ').replace(/[−–]/g, '-'));
  const sign = /^[+-]\s*/.exec(text);
  const body = sign ? text.slice(sign[0].length) : text;
  const factor = sign?.[0].startsWith('-') ? -1 : 1;

  const fraction = FRACTION.exec(body);
  if (fraction) {
    const [all, whole, top, bottom] = fraction;
    const rest = body.slice(all.length);
    if (Number(bottom) === 0) return { fault: 'zero_denominator', text: all };
    if (MORE_NUMBER.test(rest) || (whole !== undefined && Number(top) >= Number(bottom))) {
      return { fault: 'unclear', text: input };
    }
    const value = factor * (Number(whole ?? 0) + Number(top) / Number(bottom));
    return Number.isFinite(value)
      ? { value, rest: rest.trim(), text: `${factor < 0 ? '-' : ''}${all}` }
      : { fault: 'too_large', text: all };
  }

  const plain = PLAIN.exec(body);
  if (!plain) return { fault: 'none' };
  const rest = body.slice(plain[0].length);
  const decimalComma = /^(?:\d{1,3}(?:\.\d{3})+|\d+),\d+/.exec(body);
  if (decimalComma && (/^[,.]\d/.test(rest) || /^0,\d{3}\b/.test(body))) {
    const decimal = decimalComma[0].replace(/\./g, '').replace(',', '.');
    return {
      fault: 'comma',
      text: decimalComma[0],
      decimal,
      rest: body.slice(decimalComma[0].length).trim(),
    };
  }
  if (MORE_NUMBER.test(rest)) return { fault: 'unclear', text: input };
  const value = factor * Number(plain[0].replace(/,/g, ''));
  if (!Number.isFinite(value)) return { fault: 'too_large', text: plain[0] };
  return { value, rest: rest.trim(), text: `${factor < 0 ? '-' : ''}${plain[0]}` };
}
