import type { UnitSystem } from '../quantity/format.js';
import type { Answer } from '../study/answer.js';
import { checkDocument } from './check-document.js';
import type { Document } from './document.js';
import { flowDocument } from './flow-document.js';

export function answerDocument(answer: Answer, units: UnitSystem, brief = false): Document {
  switch (answer.question) {
    case 'check':
      return checkDocument(answer, units, brief);
    case 'flow':
      return flowDocument(answer, units, brief);
  }
}
