import type { DrillUnits, PrintedUnit } from './problem.js';

/** The units of a sheet by what they measure, and the round amounts that formulae divide by. */
export interface TradeUnits {
  readonly pressure: PrintedUnit;
  readonly flow: PrintedUnit;
  readonly length: PrintedUnit;
  readonly bore: PrintedUnit;
  readonly volume: PrintedUnit;
  readonly cubic: PrintedUnit;
  readonly mass: PrintedUnit;
  readonly density: PrintedUnit;
  readonly force: PrintedUnit;
  readonly distance: PrintedUnit;
  readonly vacuum: PrintedUnit;
  readonly slope: PrintedUnit;
  /** One pressure, flow, length, bore as written in a formula. */
  readonly p: string;
  readonly q: string;
  readonly l: string;
  readonly d: string;
}

export const TRADE_UNITS: Record<DrillUnits, TradeUnits> = {
  us: {
    pressure: 'psi',
    flow: 'gpm',
    length: 'ft',
    bore: 'in',
    volume: 'gal',
    cubic: 'ft³',
    mass: 'lb',
    density: 'lb/gal',
    force: 'lbf',
    distance: 'mi',
    vacuum: 'inHg',
    slope: 'psi/ft',
    p: 'psi',
    q: 'gpm',
    l: 'ft',
    d: 'inch',
  },
  si: {
    pressure: 'kPa',
    flow: 'L/min',
    length: 'm',
    bore: 'mm',
    volume: 'L',
    cubic: 'm³',
    mass: 'kg',
    density: 'kg/L',
    force: 'N',
    distance: 'km',
    vacuum: 'mmHg',
    slope: 'kPa/m',
    p: 'kPa',
    q: 'lpm',
    l: 'm',
    d: 'mm',
  },
};
