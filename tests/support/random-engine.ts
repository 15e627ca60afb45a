import type { Random } from './random.js';

/** Layouts drawn at random, to find the one on which a rule of the solver cycles. All figures are invented. */

type Document = Record<string, unknown>;

const rounded = (value: number): number => Number(value.toPrecision(4));

function randomPump(random: Random): Document {
  const shutoff = rounded(random.between(120, 600));
  const last = rounded(random.between(20, 400));
  // Falls by a power of the flow, now and then with a droop before it.
  const exponent = random.between(1.5, 2.5);
  const droop = random.chance(0.1) ? random.between(1, 1.03) : 1;
  const at = (part: number) => [
    `${rounded(part * last)} gpm`,
    `${rounded(shutoff * (part === 0.25 ? droop : 1) * (1 - 0.8 * part ** exponent))} psi`,
  ];
  const rows = [0.3, 0.6, 0.9].map((part) => [
    `${rounded(part * last)} gpm`,
    `${rounded(random.between(25, 70))} %`,
  ]);
  const horsepower = (shutoff * last) / 1714 / random.between(0.4, 1.6);
  return {
    name: 'random pump',
    rated_speed: '5000 rpm',
    points: [0, 0.25, 0.5, 0.75, 1].map(at),
    ...(random.chance(0.7) && {
      power: {
        rated: `${rounded(horsepower)} hp`,
        aspiration: random.pick(['natural', 'turbocharged']),
        fuel: random.pick(['gasoline', 'diesel']),
        lugging: random.pick(['constant_power', 'flat_torque']),
      },
      efficiency: rows,
    }),
    ...(random.chance(0.5) && {
      npsh_required: [[`${rounded(last / 2)} gpm`, `${rounded(random.between(2, 20))} ft`]],
    }),
    ...(random.chance(0.5) && { limits: { inlet: '200 psi', casing: '700 psi' } }),
    ...(random.chance(0.5) && { trapped_volume: '0.5 gal' }),
  };
}

function randomPipe(random: Random): Document {
  const inches = rounded(random.between(0.8, 4));
  return {
    pipe: {
      inside_diameter: `${inches} in`,
      ...random.pick([{ roughness: '0.0018 in' }, { hazen_williams: 130 }]),
    },
    length: `${rounded(random.between(1, 12))} ft`,
  };
}

const checkValve = (random: Random): Document => ({
  check_valve: random.pick([
    { k: rounded(random.between(0, 5)), inside_diameter: '2 in' },
    { loss: `${rounded(random.between(0.5, 5))} psi` },
  ]),
});

function randomHose(random: Random, steep: number): Document {
  const length = rounded(random.between(20, 600));
  return {
    hose: { inside_diameter: '1.6 in', coefficient: rounded(random.between(5, 150)) },
    length: `${length} ft`,
    rise: `${rounded(random.between(-steep, steep) * length)} ft`,
  };
}

function randomEnd(random: Random, name: string): Document {
  if (random.chance(0.05)) return { open_end: true };
  if (random.chance(0.05)) return { cap: true };
  const flow = rounded(random.between(5, 80));
  const nozzle = random.pick<Document>([
    { kind: 'smooth_bore', bore: `${rounded(random.between(0.15, 0.8))} in` },
    { kind: 'fog', flow: `${flow} gpm`, pressure: `${random.pick([50, 75, 100])} psi` },
    {
      kind: 'automatic',
      pressure: '100 psi',
      flow_from: `${flow} gpm`,
      flow_to: `${rounded(flow * random.between(1.5, 6))} gpm`,
    },
  ]);
  return { nozzle, name, state: random.chance(0.8) ? 'open' : 'shut' };
}

function randomLay(random: Random, prefix = 'the'): Document[] {
  const steep = random.pick([0, 0.1, 0.5]);
  const lay: Document[] = [];
  const branches = random.integer(0, 4);
  for (let i = 0; i < branches; i++) {
    lay.push(randomHose(random, steep));
    if (random.chance(0.15)) lay.push(checkValve(random));
    if (random.chance(0.1)) {
      lay.push({ siamese: [1, 2].map(() => [{ ...randomHose(random, 0), rise: '0 ft' }]) });
    }
    const steps = [randomHose(random, steep), randomEnd(random, `${prefix} nozzle ${i}`)];
    lay.push({
      branch: { k: 1, inside_diameter: '1.5 in' },
      to: [{ name: `${prefix} lateral ${i}`, steps }],
    });
  }
  return [...lay, randomHose(random, steep), randomEnd(random, `${prefix} far nozzle`)];
}

function randomSupply(random: Random): unknown {
  return random.pick<unknown>([
    'tank',
    'tank',
    { draft: { lift: `${rounded(random.between(0, 20))} ft`, suction: [randomPipe(random)] } },
    { hydrant: { static: '70 psi', residual: '50 psi', flow: '500 gpm' } },
    { relay: { pressure: `${rounded(random.between(5, 150))} psi` } },
  ]);
}

export function randomLayout(random: Random): Document {
  const staging = random.pick(['parallel', 'parallel', 'series', 'series_reversed', 'a', 'b', 'separate']);
  const apart = staging === 'separate';
  const throttle = () => `${rounded(random.between(40, 100))} %`;
  return {
    title: 'random',
    site: {
      elevation: `${rounded(random.between(0, 12000))} ft`,
      air_temperature: `${rounded(random.between(20, 110))} degF`,
      derating: random.pick(['agricultural', 'sae_j1349', 'none']),
    },
    engine: {
      tank: { capacity: '500 gal', outlet_height: `${rounded(random.between(-2, 5))} ft` },
      pumps: {
        a: { model: randomPump(random), wear: `${rounded(random.between(0, 15))} %` },
        b: { model: randomPump(random), wear: `${rounded(random.between(0, 15))} %` },
      },
      plumbing: {
        intake: [randomPipe(random)],
        suction: [randomPipe(random)],
        discharge: random.chance(0.9) ? [randomPipe(random), checkValve(random)] : [randomPipe(random)],
        transfer: [randomPipe(random)],
        manifold: [randomPipe(random), { gauge: 'panel' }],
        ...(random.chance(0.7) && {
          cooling: {
            orifice: `${rounded(random.between(0.05, 0.3))} in`,
            at: random.pick(['pump', 'discharge', 'manifold']),
            state: random.chance(0.9) ? 'open' : 'shut',
          },
        }),
      },
      ...(apart && { outlets: { left: { pump: 'a' }, right: { pump: 'b' } } }),
      ...(random.chance(0.5) && { relief: { opens_at: `${rounded(random.between(60, 500))} psi` } }),
    },
    staging,
    throttle: random.pick<unknown>([
      '100 %',
      throttle(),
      { a: throttle(), b: throttle() },
      { discharge_pressure: `${rounded(random.between(50, 400))} psi` },
    ]),
    supply: randomSupply(random),
    typing: {
      custom: {
        flow: `${rounded(random.between(10, 200))} gpm`,
        pressure: `${rounded(random.between(50, 300))} psi`,
      },
    },
    lay: apart ? { left: randomLay(random, 'left'), right: randomLay(random, 'right') } : randomLay(random),
  };
}
