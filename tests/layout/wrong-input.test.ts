import { describe, expect, it } from 'vitest';
import { LayoutProblems, problemText } from '../../src/layout/problem.js';
import { readLayoutText } from '../../src/layout/read-layout.js';
import { catalogue, ENGINE, layProblemsOf, problemsOf } from './support.js';

/** The layout of the shortest engine with more of it, or more beside it. */
const inEngine = (more: string) => problemsOf(ENGINE.replace('engine: {', `engine: {${more}, `));
const beside = (more: string) => problemsOf(`${ENGINE}\n${more}`);

describe('keys and ids', () => {
  it('an unknown key, with the nearest one', () => {
    expect(beside('stagin: parallel')).toEqual([
      '2:1 stagin is no key that is known here | expected title, site, engine, staging, throttle, supply, typing, appliance_policy, terrain, surge, lay, progressive or shuttle | did you mean staging?',
    ]);
    expect(layProblemsOf('- {hose: trunk, lenght: 100 ft}')).toEqual([
      '3:6 length is missing | expected a length, for instance 300 ft',
      '3:19 lenght is no key that is known here | expected hose, length, rise, lines or name | did you mean length?',
    ]);
    expect(problemsOf('constructor: 1')).toEqual([
      "1:1 engine is missing | expected the path of an engine's file or a mapping",
      expect.stringMatching(/^1:1 constructor is no key that is known here/),
    ]);
  });

  it('a service that the pump does not name, or that was done at more hours than it has run', () => {
    const pump = (service: string, serviced: string) =>
      problemsOf(`engine:
  pumps:
    a:
      model: {points: [[0 gpm, 400 psi], [50 gpm, 350 psi], [100 gpm, 200 psi]]${service}}
      hours: 212 h
      serviced: ${serviced}`);
    const oil = ', service: {oil: {every: 50 h}, belt: {months: 12}}';
    expect(pump(oil, '{oil: {at: 212 h}, belt: {on: 2026-05-01}}')).toEqual([]);
    expect(pump(oil, '{oli: {at: 150 h}}')).toEqual([
      '6:18 the pump names no service oli | did you mean oil?',
    ]);
    expect(pump(oil, '{zzzzzz: {at: 150 h}}')).toEqual([
      '6:18 the pump names no service zzzzzz | expected one of oil, belt',
    ]);
    expect(pump('', '{oil: {at: 150 h}}')).toEqual(['6:18 the pump names no service oil']);
    expect(pump(oil, '{oil: {at: 400 h}}')).toEqual(['6:28 serviced at more hours than the pump has run']);
  });

  it('an unknown id, with the nearest one', () => {
    expect(layProblemsOf('- {hose: trunc, length: 100 ft}')).toEqual([
      '3:12 the catalogue has no hose trunc | did you mean trunk?',
    ]);
    expect(layProblemsOf('- {nozzle: zzz}')).toEqual([
      '3:14 the catalogue has no nozzle zzz | expected one of fog, tips, straight',
    ]);
    expect(layProblemsOf('- {pipe: two-inch, fittings: {elbow: 1, elbow_9: 1}}')).toEqual([
      '3:33 the catalogue has no fitting elbow | expected one of elbow_90, ball_valve',
      '3:43 the catalogue has no fitting elbow_9 | did you mean elbow_90?',
    ]);
    expect(inEngine('hose_carried: [{hose: lateral, length: 1 ft}, {hose: laterel, length: 1 ft}]')).toEqual([
      '1:63 the catalogue has no hose laterel | did you mean lateral?',
    ]);
    expect(layProblemsOf('- {pump: twn}\n- cap: true')).toEqual([
      '3:12 the catalogue has no pump twn | did you mean twin?',
    ]);
    expect(beside('typing: {scheme: tabel, class: heavy}')).toEqual([
      '2:18 the catalogue has no typing tabel | did you mean table?',
    ]);
    expect(beside('typing: {scheme: table, class: heavi}')).toEqual([
      '2:32 table has no class heavi | expected one of heavy, open | did you mean heavy?',
    ]);
  });

  it('ids that are names of every object are not found', () => {
    for (const id of ['constructor', 'toString', '__proto__', 'hasOwnProperty']) {
      expect(layProblemsOf(`- {hose: ${id}, length: 1 ft}`)).toEqual([
        expect.stringMatching(`^3:12 the catalogue has no hose ${id}`),
      ]);
    }
    expect(beside('typing: {scheme: table, class: constructor}')).toHaveLength(1);
  });

  it('a key that is not said', () => {
    expect(problemsOf('title: x')).toEqual([
      "1:1 engine is missing | expected the path of an engine's file or a mapping",
    ]);
    expect(problemsOf('engine: {tank: {capacity: 1 gal}, pumps: {b: {model: twin}}}')).toEqual([
      expect.stringMatching(/^1:35 a is missing/),
    ]);
  });

  it('an outlet that the engine does not have', () => {
    expect(
      problemsOf(`${ENGINE.replace('engine: {', 'engine: {outlets: {left: []}, ')}\nlay: {lefft: []}`),
    ).toEqual(['2:7 the engine has no outlet lefft | expected one of left']);
    expect(beside('lay: {left: []}')).toEqual([
      '2:7 the engine has no outlet left | expected a list of steps, since the engine names no outlets',
    ]);
  });

  it('the same outlet twice', () => {
    expect(inEngine('outlets: {left: [], left: []}')).toEqual([
      '1:30 left is here twice; the first is on line 1 | keep one of them',
    ]);
  });

  it('a lay that does not say which outlet it starts from', () => {
    expect(
      problemsOf(
        `${ENGINE.replace('engine: {', 'engine: {outlets: {left: [], right: []}, ')}\nlay: [{nozzle: fog}]`,
      ),
    ).toEqual([
      '2:1 the engine has the outlets left, right; which of them does this lay start from? | write it under its name: lay: { left: [...] }',
    ]);
  });
});

describe('quantities', () => {
  it('without a unit, or with one of another kind', () => {
    expect(beside('site: {elevation: 4300, air_temperature: 85 psi}')).toEqual([
      '2:19 4300 has no unit: did you mean 4300 ft? (in, mi, m, mm, cm, km would do as well)',
      '2:42 85 psi is a pressure; a temperature is wanted, for instance 85 degF',
    ]);
  });

  it('out of bounds', () => {
    expect(beside('throttle: 120 %')).toEqual(['2:11 120 % is too large: at most 110 % is wanted']);
    expect(beside('throttle: {a: 100 %, b: 0 %}')).toEqual(['2:25 0 % is too small: at least 1 % is wanted']);
    expect(layProblemsOf('- {hose: trunk, length: 0 ft}')).toEqual(['3:27 0 ft must be more than zero']);
    expect(layProblemsOf('- {hose: trunk, length: -5 ft}')).toEqual(['3:27 -5 ft must be more than zero']);
    expect(layProblemsOf('- {hose: trunk, length: 5 ft, lines: 7}')).toEqual([
      '3:40 7 stands here; a whole number from 1 to 6 is wanted',
    ]);
    expect(layProblemsOf('- {hose: trunk, length: 5 ft, lines: 1.5}')).toEqual([
      '3:40 1.5 stands here; a whole number from 1 to 6 is wanted',
    ]);
    expect(layProblemsOf('- {hose: trunk, length: 1 ft}\n- {valve: ball, open: 101 %}')).toEqual([
      '4:25 101 % is too large: at most 100 % is wanted',
    ]);
    expect(beside('supply: {hydrant: {static: 50 psi, residual: 80 psi, flow: 500 gpm}}')).toEqual([
      '2:46 the residual pressure is over the static: a hydrant loses pressure as it flows',
    ]);
    expect(beside('site: {water_temperature: 20 degF}')).toHaveLength(1);
  });

  it('with thousands in braces, which YAML would take apart', () => {
    expect(
      beside('lay: [{hose: trunk, length: 1,000 ft}, {hose: trunk, length: 1,500 ft, rise: 2,0 ft}]'),
    ).toEqual([expect.stringMatching(/^2:78 2 has no unit/), expect.stringMatching(/^2:80 0 ft is no key/)]);
    expect(beside('lay: [{hose: trunk, length: "1,000 ft"}]')).toEqual([]);
    expect(beside('lay: [{hose: trunk, length: 1,000}]')).not.toEqual([]);
  });

  it('.inf, .nan and 010', () => {
    expect(beside('site: {elevation: .inf}')).toEqual([
      '2:19 Infinity is no number with a unit; a length is wanted, for instance 300 ft',
    ]);
    expect(inEngine('crew: .nan')).toEqual(['1:16 NaN stands here; a whole number of people is wanted']);
    expect(inEngine('crew: 010')).toEqual([
      '1:16 010 starts with a zero, which some programs read as octal | write 10',
    ]);
    expect(inEngine('crew: -1')).toEqual(['1:16 -1 stands here; a whole number of people is wanted']);
  });
});

describe('models of their own', () => {
  it('tell what is wrong within them', () => {
    expect(
      layProblemsOf('- {hose: {inside_diameter: 1.5, coefficient: 24, color: red}, length: 1 ft}'),
    ).toEqual([
      '3:30 1.5 has no unit: did you mean 1.5 in? (ft, mi, m, mm, cm, km would do as well)',
      expect.stringMatching(/^3:52 color is no key that is known here/),
    ]);
    expect(layProblemsOf('- nozzle: {kind: fogg, flow: 1 gpm}')).toEqual([
      '3:20 "fogg" stands here; smooth_bore, fog, automatic or sharp_orifice is wanted: did you mean fog?',
    ]);
    expect(layProblemsOf('- nozzle: {bore: 1 in}')).toEqual([
      '3:5 kind is missing | expected smooth_bore, fog, automatic or sharp_orifice',
    ]);
  });

  it('pumps have three points or more, of rising flow', () => {
    const pump = (points: string) => layProblemsOf(`- pump: {points: ${points}}\n- cap: true`);
    expect(pump('[[0 gpm, 3 psi], [1 gpm, 2 psi]]')).toHaveLength(1);
    expect(pump('[[0 gpm, 3 psi], [2 gpm, 2 psi], [1 gpm, 1 psi]]')).toHaveLength(1);
    expect(pump('[[0 gpm, 3 psi], [2 gpm, 2 psi], [2 gpm, 1 psi]]')).toHaveLength(1);
    expect(pump('[[0 gpm, 3 psi], [1 gpm, 2 psi], [2 gpm, 1 psi]]')).toEqual([]);
  });

  it('a flow is set on a fog nozzle and on no other, and each says what to write instead', () => {
    expect(layProblemsOf('- {nozzle: fog, flow: 20 gpm}')).toEqual([]);
    expect(layProblemsOf('- {nozzle: tips, tip: 3/8 in, flow: 20 gpm}')).toEqual([
      '3:33 the flow of a smooth bore follows from its bore and its pressure, and cannot be set | leave flow out; tip: 3/8 in chooses the bore, and pressure: 50 psi says what it is laid for',
    ]);
    const own = (kind: string) => layProblemsOf(`- {nozzle: {${kind}}, flow: 20 gpm}`)[0];
    expect(own('kind: sharp_orifice, bore: 0.716 in')).toMatch(/^3:\d+ the flow of an orifice follows/);
    expect(own('kind: automatic, pressure: 100 psi, flow_from: 10 gpm, flow_to: 60 gpm')).toMatch(
      /^3:\d+ an automatic nozzle passes what comes to it/,
    );
  });

  it('nozzles take only the tips that they have', () => {
    expect(layProblemsOf('- {nozzle: tips, tip: 1/2 in}')).toEqual([
      '3:25 the nozzle has no such tip | expected one of 0.25 in, 0.375 in',
    ]);
    expect(layProblemsOf('- {nozzle: fog, tip: 1/2 in}')).toEqual(['3:19 a fog nozzle has no tip to choose']);
  });

  it('a bore is needed where velocity heads are lost', () => {
    const hint = 'put a hose or pipe before it, or give it an inside_diameter';
    expect(layProblemsOf('- valve: ball\n- cap: true')).toEqual([
      `3:5 ball loses velocity heads in a bore that is not known here | ${hint}`,
    ]);
    expect(layProblemsOf('- {hose: trunk, length: 1 ft}\n- valve: ball\n- cap: true')).toEqual([]);
    expect(inEngine('plumbing: {discharge: [{check_valve: swing}]}')).toEqual([
      `1:34 swing loses velocity heads in a bore that is not known here | ${hint}`,
    ]);
  });
});

describe('the order of steps', () => {
  const line = (steps: string) => layProblemsOf(steps);

  it('nothing comes after the end of a line', () => {
    const hint = 'lines that go on past a nozzle do so from a branch';
    expect(line('- nozzle: fog\n- {hose: trunk, length: 1 ft}\n- cap: true')).toEqual([
      `4:6 no water comes here: the nozzle before it ends the line | ${hint}`,
    ]);
    expect(line('- open_end: true\n- gauge: x')).toHaveLength(1);
    expect(line('- repeat: 2\n  steps: [{hose: trunk, length: 1 ft}, {nozzle: fog}]')).toEqual([
      `4:14 no water comes here: the nozzle before it ends the line, and the repeat goes round again | ${hint}`,
    ]);
    expect(line('- repeat: 1\n  steps: [{hose: trunk, length: 1 ft}, {nozzle: fog}]')).toEqual([]);
  });

  it('a branch goes two ways', () => {
    const one = '- branch: wye\n  to: [{steps: [{nozzle: fog}]}]';
    expect(line(one)).toEqual([
      '3:5 this branch goes one way only: one line, and no step after it | add the main line after it, or cap: true where its other side is closed',
    ]);
    expect(line(`${one}\n- cap: true`)).toEqual([]);
    expect(line('- branch: wye\n  to: [{steps: [{nozzle: fog}]}, {steps: [{cap: true}]}]')).toEqual([]);
    expect(line('- branch: wye\n  to: []\n- cap: true')).toEqual([
      '4:5 a branch leads to at least one line of its own',
    ]);
    expect(line('- branch: wye\n- cap: true')).toHaveLength(1);
  });

  it('a line of a branch has an end', () => {
    const hint = 'end it with a nozzle, open_end: true or cap: true';
    expect(line('- branch: wye\n  to: [{steps: [{hose: trunk, length: 1 ft}]}]\n- cap: true')).toEqual([
      `4:20 this line of the branch stops here, open or shut | ${hint}`,
    ]);
    expect(line('- branch: wye\n  to: [{steps: []}]\n- cap: true')).toEqual([
      `4:11 this line of the branch is empty, open or shut | ${hint}`,
    ]);
  });

  it('lines of one branch have names of their own', () => {
    expect(
      line('- branch: wye\n  to: [{name: x, steps: [{cap: true}]}, {name: x, steps: [{cap: true}]}]'),
    ).toEqual(['4:50 two lines of this branch are called x']);
  });

  it('only a pump draws from an open tank', () => {
    const message = 'pressure ends at the open tank before it, so only a pump can take the water on';
    const hint = 'put a pump after the tank, or leave the tank out';
    expect(line('- tank: 500 gal\n- nozzle: fog')).toEqual([`4:5 ${message} | ${hint}`]);
    expect(line('- tank: 500 gal\n- {hose: trunk, length: 1 ft}')).toEqual([`4:6 ${message} | ${hint}`]);
    expect(line('- tank: 500 gal')).toEqual([]);
    expect(line('- tank: 500 gal\n- pump: twin\n- nozzle: fog')).toEqual([]);
    expect(line('- tank: 500 gal\n- {hose: trunk, length: 1 ft}\n- pump: twin\n- nozzle: fog')).toEqual([]);
  });

  it('a siamese has two lines or more, which all lead on to one height', () => {
    expect(line('- siamese: [[{hose: trunk, length: 1 ft}]]\n- cap: true')).toEqual([
      '3:5 a siamese joins at least two lines',
    ]);
    expect(line('- siamese: [[{hose: trunk, length: 1 ft}], [{nozzle: fog}]]\n- cap: true')).toEqual([
      '3:48 the lines of a siamese meet again, so no nozzle can end one of them | lines that end apart hang on a branch',
    ]);
    expect(line('- siamese: [[{hose: trunk, length: 1 ft}], []]\n- cap: true')).toEqual([
      '3:46 a line of a siamese has at least one step',
    ]);
    expect(
      line(
        '- siamese: [[{hose: trunk, length: 9 ft, rise: 3 ft}], [{hose: trunk, length: 9 ft}]]\n- cap: true',
      ),
    ).toEqual([
      '3:58 line 2 of this siamese gains another height than its first line | they part and meet at the same points: give them the same rise in all',
    ]);
  });

  it('plumbing leads on', () => {
    expect(inEngine('plumbing: {manifold: [{nozzle: fog}]}')).toEqual([
      '1:33 this plumbing leads on, so no nozzle can end it | what ends in the open hangs on a branch',
    ]);
    expect(inEngine('plumbing: {manifold: [{pump: twin}]}')).toHaveLength(1);
    expect(inEngine('plumbing: {manifold: [{tank: 1 gal}]}')).toHaveLength(1);
  });

  it('a step has one kind', () => {
    expect(line('- pump: twin\n  nozzle: fog')).toEqual([
      '4:5 nozzle names a step of its own, and this step is a pump | start it with a dash on a line of its own: - nozzle: ...',
    ]);
    expect(line('- nozle: fog')).toEqual(['3:5 nozle names no kind of step: did you mean nozzle?']);
    expect(line('- cap')).toEqual([
      '3:5 "cap" stands here; a step is wanted, for instance { hose: ID, length: 100 ft }',
    ]);
    expect(line('- {}')).toHaveLength(1);
    expect(line('- cap: false')).toEqual(['3:10 write cap: true, or leave the step out']);
  });

  it('a pipe has a length, fittings or both', () => {
    expect(line('- pipe: two-inch')).toEqual([
      '3:5 a pipe has a length, fittings or both, and this has neither',
    ]);
  });

  it('nothing rises by more than its length', () => {
    expect(line('- {hose: trunk, length: 10 ft, rise: 11 ft}')).toEqual([
      '3:40 it rises or drops by more than its own length',
    ]);
    expect(line('- {hose: trunk, length: 10 ft, rise: -11 ft}')).toHaveLength(1);
    expect(line('- {hose: trunk, length: 10 ft, rise: 200 %}')).toEqual([]);
  });

  it('a repeat repeats something, and not without end', () => {
    expect(line('- {repeat: 3, steps: []}')).toEqual([
      '3:17 nothing is repeated here: its list of steps is empty',
    ]);
    expect(line('- {repeat: 0, steps: [{gauge: x}]}')).toEqual([
      '3:14 0 stands here; a whole number from 1 to 100,000 is wanted',
    ]);
    expect(line('- repeat: 1000\n  steps: [{repeat: 1000, steps: [{gauge: x}]}]')).toEqual([
      '3:13 the layout has more than 100,000 steps once its repeats are written out',
    ]);
    const nested = `- ${'{repeat: 9, steps: ['.repeat(60)}{gauge: x}${']}'.repeat(60)}`;
    expect(line(nested)).toEqual([
      '3:14 the layout has more than 100,000 steps once its repeats are written out',
    ]);
  });
});

describe('pumps and stagings', () => {
  const one = ENGINE.replace(', b: {model: twin}', '');

  it('series needs both pumps', () => {
    expect(problemsOf(`${one}\nstaging: series`)).toEqual([
      '2:10 series needs pump b, and the engine has none | add pump b under pumps, or write staging: a',
    ]);
    expect(problemsOf(`${one}\nthrottle: {b: 50 %}`)).toEqual([
      '2:12 a throttle for pump b, and the engine has none',
    ]);
    expect(beside('staging: paralel')).toEqual([
      '2:10 "paralel" stands here; parallel, series, series_reversed, a, b or separate is wanted: did you mean parallel?',
    ]);
  });

  it('pumps that work apart have an outlet each', () => {
    const withOutlets = (outlets: string) =>
      problemsOf(`${ENGINE.replace('engine: {', `engine: {outlets: ${outlets}, `)}\nstaging: separate`);
    expect(withOutlets('{left: {pump: a}, right: {pump: b}}')).toEqual([]);
    expect(withOutlets('{left: {pump: a}}')).toEqual([
      '2:10 the pumps work apart, and pump b has no outlet | name one under outlets: { left: { pump: b } }',
    ]);
    expect(withOutlets('{left: {pump: a}, right: []}')).toEqual([
      '1:37 the pumps work apart, and outlet right does not say whose it is | write right: { pump: a, steps: [...] }',
    ]);
  });

  it('an engine without a tank is legal: its water stands level with the pumps', () => {
    const dry = ENGINE.replace('tank: {capacity: 500 gal}, ', '');
    expect(problemsOf(dry)).toEqual([]);
    expect(problemsOf(`${dry}\nsupply: {relay: {pressure: 20 psi}}`)).toEqual([]);
  });

  it('a typing without a pressure has to be given one', () => {
    expect(beside('typing: {scheme: table, class: open}')).toEqual([
      '2:1 this typing states a flow and no pressure to make it at | add the pressure to judge by: pressure: 150 psi',
    ]);
  });
});

describe('terrain', () => {
  const terrain = (points: string, lay = '[]') => beside(`terrain: ${points}\nlay: ${lay}`);

  it('has points further and further on, on ground that hose can lie on', () => {
    expect(terrain('[[0 ft, 0 ft]]')).toHaveLength(1);
    expect(terrain('[[10 ft, 0 ft], [20 ft, 1 ft]]')).toEqual([
      '2:12 the first point of the terrain is at the engine, at distance 0 | write 0 ft',
    ]);
    expect(terrain('[[0 ft, 0 ft], [10 ft, 1 ft], [10 ft, 2 ft]]')).toEqual([
      '2:41 this point is no further on than the one before it',
    ]);
    expect(terrain('[[0 ft, 0 ft], [10 ft, 11 ft]]')).toEqual([
      '2:33 from the point before, the height changes by more than the distance along the ground | distances off a map go under on_map',
    ]);
    expect(terrain('[[0 ft, 0 ft], [10 ft]]')).toHaveLength(1);
  });

  it('reaches as far as the hose that hangs on it', () => {
    const points = '[[0 ft, 0 ft], [1,000 ft, 90 ft]]';
    expect(terrain(points, '[{hose: trunk, length: 1000 ft}]')).toEqual([]);
    expect(terrain(points, '[{hose: trunk, length: 1200 ft}]')).toEqual([
      '2:26 the terrain ends at 1,000 ft, and the hose of outlet runs to 1,200 ft | add a point further on, or give the hose beyond it a rise of its own',
    ]);
    expect(
      terrain(points, '[{hose: trunk, length: 1000 ft}, {hose: trunk, length: 9 ft, rise: 0 ft}]'),
    ).toEqual([]);
  });
});

describe('what a reader sees', () => {
  const text = `title: ${'x'.repeat(100)} &\nsite: {elevation: 300}\n${ENGINE}\nlay: {a: "\\e[31m"}\n`;
  const read = () => readLayoutText(text, 'a.yaml', { catalogue });

  it('every problem at once, in the order of the text, with the line and a marker under the fault', () => {
    let caught: unknown;
    try {
      read();
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(LayoutProblems);
    const { problems, message } = caught as LayoutProblems;
    expect(problems.map(({ line }) => line)).toEqual([2, 4, 4]);
    expect(problems[0]).toMatchObject({
      file: 'a.yaml',
      path: ['site', 'elevation'],
      line: 2,
      column: 19,
      excerpt: 'site: {elevation: 300}',
      markerOffset: 18,
      markerLength: 3,
    });
    expect(problemText(problems[0]).split('\n').slice(1, 3)).toEqual([
      '  2 | site: {elevation: 300}',
      '                        ^^^',
    ]);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: that there are none is what is asked
    expect(message).not.toMatch(/[\u0000-\u0009\u000b-\u001f]/);
    expect(message).not.toMatch(/\n\s+at /);
  });

  it('long lines are cut around the fault', () => {
    const long = `${ENGINE}\nlay: [${'{hose: trunk, length: 1 ft}, '.repeat(20)}{hose: trunk, length: 7}, ${'{hose: trunk, length: 1 ft}, '.repeat(20)}{cap: true}]`;
    let problem: LayoutProblems['problems'][number] | undefined;
    try {
      readLayoutText(long, 'a.yaml', { catalogue });
    } catch (error) {
      [problem] = (error as LayoutProblems).problems;
    }
    const { excerpt = '', markerOffset = 0, markerLength = 0 } = problem ?? {};
    expect(excerpt.length).toBeLessThanOrEqual(70);
    expect(excerpt.slice(markerOffset, markerOffset + markerLength)).toBe('7');
  });

  it('faults by the thousand are not all printed', () => {
    const keys = Array.from({ length: 5000 }, (_, index) => `k${index}: 1`).join('\n');
    let caught: LayoutProblems | undefined;
    try {
      readLayoutText(`${ENGINE}\n${keys}`, 'a.yaml', { catalogue });
    } catch (error) {
      caught = error as LayoutProblems;
    }
    expect(caught?.problems.length).toBe(200);
    expect(caught?.more).toBe(true);
    expect(caught?.message).toContain('There are more; these are the first 200 that were found.');
  });
});
