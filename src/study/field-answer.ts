import type { Impossibility } from '../limits/impossible.js';

/** A state that is always looked into; `breaks` has the codes of the cautions that it raises. */
export interface CaseAnswer {
  code: 'all_shut' | 'governor_stuck' | 'far_line_burst' | 'one_pump_out' | 'lowest_point';
  title: string;
  /** Why it cannot be, where it cannot: no figure of it holds. */
  impossible?: Impossibility;
  totalFlow: number;
  /** Undefined where the lay has no hose. */
  highestHose?: { at: string; pressure: number };
  breaks: string[];
}

/** A point on the ground along a lay. */
export interface ProfilePoint {
  name: string;
  /** Hose from the outlet, m. */
  distance: number;
  /** m above the pump inlets. */
  height: number;
  /** Total gauge pressure with the lay as it stands, Pa. */
  pressure: number;
  /** Through the hose there, m3/s. */
  flow?: number;
}

/** How the line to the far nozzle of an outlet lies on the ground. Lengths of hose and heights, never one for the other. */
export interface ProfileAnswer {
  outlet: string;
  to: string;
  /** Hose along the slope, m. */
  hose: number;
  /** The same off a map, m. */
  onMap: number;
  /** Height of the far end over the outlet, m. */
  climb: number;
  /** Where the line is highest, and where it is lowest. */
  highest: ProfilePoint;
  lowest: ProfilePoint;
  /** The highest point lies in the middle: the line goes over a ridge. */
  overRidge: boolean;
  /** Hose of the trunk was taken as level because nothing was said of its height, m. */
  takenLevel: number;
}

/** What the habit of taking all flow to the far end would have said of a trunk, beside what it loses. */
export interface HabitAnswer {
  outlet: string;
  /** Flow that enters the trunk. */
  flow: number;
  /** Hose of the trunk, m. */
  hose: number;
  /** Friction with the flow leaving where it leaves, and with all of it going to the far end, Pa. */
  actual: number;
  endToEnd: number;
}

export interface SupplyAnswer {
  kind: 'tank' | 'draft' | 'hydrant' | 'relay';
  /** Drawn from it. */
  flow: number;
  /** Total gauge pressure where the suctions part, Pa. */
  intake: number;
  /** Least pressure that should stand there, and where that is from. */
  floor?: { pressure: number; source: string };
  draft?: {
    lift: number;
    /** The most that air pressure could lift here, and what a pump in good order attains. */
    theoreticalLift: number;
    attainableLift: number;
  };
  hydrant?: {
    static: number;
    residual: number;
    flow: number;
    /** What it gives when drawn down to the floor. */
    atFloor?: number;
  };
  relay?: {
    /** What the pump before holds here. */
    pressure: number;
    /** Where the intake relief should open, and where it does, if the layout says. */
    reliefAt: number;
    relief?: number;
    source: string;
  };
}

/** An open tank in the line: it fills or runs down by the difference of its two flows. */
export interface PortableTankAnswer {
  name: string;
  capacity: number;
  inflow: number;
  outflow: number;
}
