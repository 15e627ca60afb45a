import type { UnitSystem } from '../quantity/format.js';
import type { Answer } from '../study/answer.js';
import { advanceDocument } from './advance-document.js';
import { checkDocument } from './check-document.js';
import { clockDocument } from './clock-document.js';
import type { Document } from './document.js';
import { flowDocument } from './flow-document.js';
import { reachDocument } from './reach-document.js';
import { requireDocument } from './require-document.js';

export function answerDocument(answer: Answer, units: UnitSystem, brief = false): Document {
  switch (answer.question) {
    case 'check':
      return checkDocument(answer, units, brief);
    case 'flow':
      return flowDocument(answer, units, brief);
    case 'require':
      return requireDocument(answer, units, brief);
    case 'advance':
      return advanceDocument(answer, units, brief);
    case 'clock':
      return clockDocument(answer, units, brief);
    case 'reach':
      return reachDocument(answer, units, brief);
  }
}
