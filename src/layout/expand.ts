import type { Draft } from './draft.js';
import type { Reading } from './reading.js';
import type { Step } from './step.js';
import type { Ground } from './terrain.js';

/** Lines of a siamese meet at one height to within this, m: a slip of rounding between feet and metres. */
const SAME_HEIGHT = 0.01;

/**
 * Writes a line out: repeats one by one with `{n}` counted (`2.3` for the third of the second, where one repeat stands
 * in another), a label for each step, heights from the ground.
 */
export function expand(drafts: readonly Draft[], group: string, reading: Reading, ground?: Ground): Step[] {
  return new Expansion(group, reading, ground, '').line(drafts);
}

/** Ground that a line takes: its hose, and of lines that part and meet again the shortest. */
function groundLength(drafts: readonly Draft[]): number {
  let total = 0;
  for (const { key, step, count, lines } of drafts) {
    if (step?.kind === 'hose') total += step.length;
    if (key === 'repeat') total += count * lines.reduce((sum, line) => sum + groundLength(line.steps), 0);
    if (key === 'siamese') total += Math.min(...lines.map((line) => groundLength(line.steps)));
  }
  return total;
}

/** Height that a line gains from start to end, m. */
export function riseOf(steps: readonly Step[]): number {
  return steps.reduce((sum, step) => {
    if (step.kind === 'siamese') return sum + riseOf(step.siamese[0]);
    return 'rise' in step ? sum + step.rise : sum;
  }, 0);
}

class Expansion {
  private readonly group: string;
  private readonly reading: Reading;
  private readonly ground: Ground | undefined;
  private readonly counts = new Map<string, number>();
  /** Which round of the repeats around it this is: `2`, `2.3`; empty outside any. */
  private round: string;

  constructor(group: string, reading: Reading, ground: Ground | undefined, round: string) {
    this.group = group;
    this.reading = reading;
    this.ground = ground;
    this.round = round;
  }

  line(drafts: readonly Draft[], into: Step[] = []): Step[] {
    for (const draft of drafts) {
      if (draft.key === 'repeat') this.repeat(draft, into);
      else if (draft.step) into.push(this.step(draft, draft.step));
    }
    return into;
  }

  private repeat({ count, lines }: Draft, into: Step[]): void {
    const around = this.round;
    for (let n = 1; n <= count; n++) {
      this.round = around === '' ? String(n) : `${around}.${n}`;
      for (const { steps } of lines) this.line(steps, into);
    }
    this.round = around;
  }

  private counted(name: string): string {
    return this.round === '' ? name : name.replaceAll('{n}', this.round);
  }

  private step(draft: Draft, step: Step): Step {
    const kind = step.kind.replace('_', ' ');
    const count = (this.counts.get(kind) ?? 0) + 1;
    this.counts.set(kind, count);
    const name = step.name === undefined ? undefined : this.counted(step.name);
    const label = name ?? `${kind} ${count} of ${this.group}`;
    const copy = { ...step, label, ...(name === undefined ? {} : { name }) };
    switch (copy.kind) {
      case 'hose': {
        if (!this.ground) return copy;
        const over = this.ground.advance(copy.length, copy.riseBasis === 'level');
        return copy.riseBasis === 'level' ? { ...copy, ...over, riseBasis: 'terrain' } : copy;
      }
      case 'gauge':
        return { ...copy, gauge: label };
      case 'branch':
        return { ...copy, to: this.branchLines(draft, label) };
      case 'siamese':
        return { ...copy, siamese: this.siameseLines(draft, label) };
      default:
        return copy;
    }
  }

  private branchLines({ lines }: Draft, label: string) {
    return lines.map((line, index) => {
      const name = line.name === undefined ? `line ${index + 1} of ${label}` : this.counted(line.name);
      const steps = new Expansion(name, this.reading, undefined, this.round).line(line.steps);
      return { name, steps, ...line.spot.placed() };
    });
  }

  private siameseLines({ lines, spot }: Draft, label: string): Step[][] {
    const lengths = lines.map((line) => groundLength(line.steps));
    const shortest = Math.min(...lengths);
    const written = lines.map((line, index) => {
      const ground = this.ground?.underLine(lengths[index], shortest);
      return new Expansion(`line ${index + 1} of ${label}`, this.reading, ground, this.round).line(
        line.steps,
      );
    });
    this.ground?.advance(shortest, false);
    const rises = written.map(riseOf);
    const odd = rises.findIndex((rise) => Math.abs(rise - rises[0]) > SAME_HEIGHT);
    if (odd > 0) {
      this.reading.report(spot, `line ${odd + 1} of this siamese gains another height than its first line`, {
        within: ['siamese', odd],
        hint: 'they part and meet at the same points: give them the same rise in all',
      });
    }
    return written;
  }
}
