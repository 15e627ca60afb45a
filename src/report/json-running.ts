import type { UnitSystem } from '../quantity/format.js';
import type { LineControl, PressureControl, StagingAdvice, SuctionAnswer } from '../study/answer.js';
import { figuresIn } from './figures.js';
import { orNull, Vacuum } from './json-tree.js';
import { of } from './required.js';
import { statementText } from './sentence.js';

export const suctionTree = ({ pumps, tank, lift }: SuctionAnswer, units: UnitSystem) => ({
  pumps: pumps.map((pump) => ({
    pump: pump.pump,
    npsh_available: pump.available > 0 ? of('length', pump.available) : null,
    npsh_required: of('length', pump.needed),
    basis: pump.basis,
    vacuum: pump.available > 0 ? new Vacuum(pump.vacuum) : null,
    cavitates_from: orNull('flow', pump.cavitatesFrom),
  })),
  tank: tank.map((line) => ({
    level: of('ratio', line.level),
    verdict: line.verdict,
    pump: line.pump ?? null,
    margin: orNull('length', line.margin),
    vacuum: line.vacuum === undefined ? null : new Vacuum(line.vacuum),
    reason: line.refusal ? statementText(line.refusal, figuresIn(units)) : null,
  })),
  lift: lift
    ? {
        lift: of('length', lift.lift),
        attainable: of('length', lift.attainable),
        hose_stated: lift.hoseStated,
        rows: lift.rows.map((row) => ({
          staging: row.staging,
          most: of('flow', row.most),
          limit: row.limit,
          pump: row.pump,
          basis: row.basis,
          vacuum: row.vacuum === undefined ? null : new Vacuum(row.vacuum),
        })),
      }
    : null,
});

function deviceTree(device: PressureControl['device']) {
  if (device === undefined) return null;
  const set = of('pressure', device.set);
  if (device.kind === 'governor') return { kind: device.kind, set };
  const { kind, overpressure, fullFlow } = device;
  return { kind, set, overpressure: of('ratio', overpressure), full_flow: of('flow', fullFlow) };
}

/** What keeps the pressure down when a line is shut, and what happens all the same. */
export const lineControlTree = (control: LineControl) => ({
  device: deviceTree(control.device),
  relief_idle: control.reliefIdle,
  over_setting: orNull('pressure', control.overSetting),
  line_shut: control.lineShut
    ? {
        nozzle: control.lineShut.nozzle,
        at: control.lineShut.at,
        rise: of('pressure', control.lineShut.rise),
        at_nozzle: control.lineShut.held,
      }
    : null,
  surges: control.surges.map((surge) => ({
    nozzle: surge.nozzle,
    velocity: of('velocity', surge.velocity),
    wave_speed: of('velocity', surge.waveSpeed),
    stated: surge.stated,
    closing_time: orNull('time', surge.closingTime),
    rise: of('pressure', surge.rise),
    peak: of('pressure', surge.peak),
    hose_limit: orNull('pressure', surge.hoseLimit?.pressure),
  })),
});

export const pressureControlTree = (control: PressureControl) => ({
  ...lineControlTree(control),
  flowing: of('pressure', control.flowing),
  shut: of('pressure', control.shut),
  needed: orNull('pressure', control.needed),
  highest_setting: control.highest
    ? {
        pressure: of('pressure', control.highest.pressure),
        by: control.highest.by,
        rule: control.highest.rule,
      }
    : null,
  highest_at: control.places.map(({ at, highest }) => ({
    at,
    pressure: orNull('pressure', highest?.pressure),
    by: highest?.by ?? null,
  })),
  series: control.series.map((one) => ({
    staging: one.staging,
    second: one.second,
    inlet: of('pressure', one.shut),
    inlet_limit: orNull('pressure', one.limit),
    discharge: of('pressure', one.discharge),
    casing_limit: orNull('pressure', one.casing),
  })),
});

export const stagingAdviceTree = (advice: StagingAdvice, units: UnitSystem) => ({
  best: advice.best,
  verdict: advice.verdict,
  reason: statementText(advice.reason, figuresIn(units)),
  parallel: advice.parallel
    ? {
        shares: advice.parallel.shares.map(({ pump, flow, share, cooling }) => ({
          pump,
          flow: of('flow', flow),
          cooling_flow: orNull('flow', cooling),
          share: of('ratio', share),
        })),
        weaker: advice.parallel.weaker,
        shut_out_from: orNull('pressure', advice.parallel.shutOutFrom),
        shut_out_at_rest: advice.parallel.shutOutAtRest,
        balance: advice.parallel.balance
          ? {
              pump: advice.parallel.balance.pump,
              throttle: of('ratio', advice.parallel.balance.throttle),
              pressure: of('pressure', advice.parallel.balance.pressure),
            }
          : null,
        drooping: advice.parallel.drooping,
      }
    : null,
  series: advice.series.map((one) => ({
    staging: one.staging,
    first: one.first,
    second: one.second,
    flow: of('flow', one.flow),
    between: of('pressure', one.between),
    between_limit: orNull('pressure', one.betweenLimit),
    most_if_first_stops: orNull('flow', one.firstStops?.most),
  })),
});
