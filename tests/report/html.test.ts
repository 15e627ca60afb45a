import { expect, test } from 'vitest';
import { answerDocument } from '../../src/report/answer-document.js';
import { htmlOf } from '../../src/report/html.js';
import { flowing, meeting } from './answers.js';

const html = (answer: Parameters<typeof answerDocument>[0]): string => htmlOf(answerDocument(answer, 'us'));

test('the page stands alone: no script, no link, nothing fetched', () => {
  for (const answer of [meeting(), flowing()]) {
    const page = html(answer);
    expect(page).not.toMatch(/<script|<link|<img|<iframe|\bsrc=|\bhref=|url\(|@import/i);
    expect(page).toContain("default-src 'none'");
  }
});

test('every element that opens closes, in order', () => {
  const open: string[] = [];
  for (const [, slash, tag] of html(meeting()).matchAll(/<(\/?)([a-z]+\d?)\b[^>]*>/g)) {
    if (tag === 'meta') continue;
    if (slash) expect(open.pop()).toBe(tag);
    else open.push(tag);
  }
  expect(open).toEqual([]);
});

test('text out of a file stays text', () => {
  const answer = meeting();
  answer.title = `</title><script>alert("1")</script>'&`;
  const page = html(answer);
  expect(page).not.toContain('<script');
  expect(page).toContain('&lt;/title&gt;&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt;&#39;&amp;');
});

test('a good cell says so in words as well as by its class', () => {
  expect(html(meeting())).toContain('<td class="good">MEETS</td>');
});
