import { expect, test } from 'vitest';
import { criticalClosingTime, surgePressure, waveSpeed } from '../../src/physics/joukowsky.js';
import { expectPrinted } from './hydraulic-units.js';

const SOURCE = 'Textbook companion, solved surge examples';

test(`${SOURCE}: rigid pipe, K 2.2 GPa, 998 kg/m3, 3 m/s: 4.445 MPa`, () => {
  const speed = waveSpeed(998, 0.6, 0.012, Number.POSITIVE_INFINITY, 2.2e9);
  expectPrinted(surgePressure(998, speed, 3) / 1e6, '4.445');
});

test(`${SOURCE}: 60 cm steel pipe of 1.2 cm wall, 2.1 m/s: 3.040 MPa rigid, 2.482 MPa elastic`, () => {
  // The bulk modulus is not in the statement as seen: 2.1 GPa and 998 kg/m3 are inferred, and give both figures.
  const rigid = waveSpeed(998, 0.6, 0.012, Number.POSITIVE_INFINITY, 2.1e9);
  const elastic = waveSpeed(998, 0.6, 0.012, 2.1e11, 2.1e9);
  expectPrinted(surgePressure(998, rigid, 2.1) / 1e6, '3.040');
  expectPrinted(surgePressure(998, elastic, 2.1) / 1e6, '2.482');
});

test(`${SOURCE}: closing 800 m in 2 s turns 3.235 MPa into 2.394 MPa, so a wave runs out and back in 1.48 s`, () => {
  const speed = 3.235e6 / (998 * 3);
  expect(Math.abs((3.235 * criticalClosingTime(800, speed)) / 2 - 2.394)).toBeLessThan(0.002);
});
