import type { ShuttleDocument } from '../layout/schema/shuttle.js';
import { shuttleFlow, shuttleLeg, TENDER_DELIVERED } from '../physics/shuttle.js';
import type { ShuttleGap } from './clock-answer.js';

/** How long a tender takes for each part of its round, s. */
export interface ShuttleRound {
  fill: number;
  /** Loaded, from the fill site to the engine. */
  there: number;
  dump: number;
  back: number;
  cycle: number;
}

export function shuttleRound(shuttle: ShuttleDocument): ShuttleRound {
  const { fill, dump, distance, distance_back = distance, speed, speed_back = speed } = shuttle;
  const there = shuttleLeg(distance, speed);
  const back = shuttleLeg(distance_back, speed_back);
  return { fill, there, dump, back, cycle: fill + there + dump + back };
}

/** What one tender delivers in a round, m3. */
export function tenderLoad({ tank }: ShuttleDocument): number {
  return TENDER_DELIVERED * tank;
}

/** The most that one fill site and one dump site can pass, however many tenders there are, m3/s. */
export function siteFlow(shuttle: ShuttleDocument): number {
  return tenderLoad(shuttle) / Math.max(shuttle.fill, shuttle.dump);
}

/** What the shuttle sustains, m3/s: one tender at a time fills, and one dumps. */
export function sustainedFlow(shuttle: ShuttleDocument): number {
  const { tenders, tank } = shuttle;
  return Math.min(shuttleFlow(tenders, tank, shuttleRound(shuttle).cycle), siteFlow(shuttle));
}

/** Tenders that it takes to sustain a flow; undefined where one fill and dump site cannot pass it. */
export function tendersNeeded(shuttle: ShuttleDocument, flow: number): number | undefined {
  if (flow > siteFlow(shuttle)) return undefined;
  return Math.max(1, Math.ceil((flow * shuttleRound(shuttle).cycle) / tenderLoad(shuttle) - 1e-9));
}

/** Looked at for so long, s: a working shift (a choice of this program). */
export const SHUTTLE_HORIZON = 12 * 3600;

/**
 * When water first fails and when the next tender is in; undefined where it does not fail within SHUTTLE_HORIZON.
 *
 * Tenders come spaced evenly over a round, the first at `first_in`; one at a time dumps, one at a time fills; what finds
 * no room waits in the tender. `stored` is what can be drawn at the start, `room` what the tanks beside the engine hold.
 */
export function firstGap(
  shuttle: ShuttleDocument,
  draw: number,
  stored: number,
  room: number,
): ShuttleGap | undefined {
  if (draw <= 0) return undefined;
  const { fill, there, dump, back, cycle } = shuttleRound(shuttle);
  const load = tenderLoad(shuttle);
  const ready = Array.from(
    { length: shuttle.tenders },
    (_, index) => (shuttle.first_in ?? 0) + (index * cycle) / shuttle.tenders,
  );
  let time = 0;
  let store = stored;
  let fillFree = 0;
  while (time < SHUTTLE_HORIZON) {
    const next = ready.indexOf(Math.min(...ready));
    const arrives = Math.max(time, ready[next]);
    store -= draw * (arrives - time);
    if (store < 0) return { from: arrives + store / draw, until: arrives };
    time = arrives;
    const inflow = dump > 0 ? load / dump : Number.POSITIVE_INFINITY;
    // It dumps as fast as it can until the tanks are full, and then as fast as water is drawn.
    const untilFull =
      inflow > draw ? (dump > 0 ? (room - store) / (inflow - draw) : 0) : Number.POSITIVE_INFINITY;
    if (untilFull < dump || dump === 0) {
      const poured = dump > 0 ? inflow * untilFull : Math.min(load, room - store);
      store = dump > 0 ? room : store + poured;
      time += untilFull + (load - poured) / draw;
    } else {
      store += (inflow - draw) * dump;
      if (store < 0) return { from: time + dump + store / (draw - inflow) };
      time += dump;
    }
    const filling = Math.max(time + back, fillFree);
    fillFree = filling + fill;
    ready[next] = fillFree + there;
  }
  return undefined;
}
