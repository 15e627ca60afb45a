// Crane TP-410 (2009), K = N f_T, as a public hydraulics library (fluids) quotes it. Tees: older editions, from memory.
// Least velocities that hold a check valve open: v = n / sqrt(rho), n in SI from the same library, rho 998.2 kg/m3 (20 degC); the
// tolerance is half of the last digit of the rows.
import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '../../src/catalogue/load.js';

const FITTINGS: Record<string, number> = {
  elbow_90: 30,
  elbow_45: 16,
  return_180: 50,
  tee_run: 20,
  tee_branch: 60,
  ball_valve: 3,
  gate_valve: 8,
  globe_valve: 340,
  angle_valve: 150,
  angle_valve_streamlined: 55,
  plug_valve: 18,
  plug_valve_run: 30,
  plug_valve_branch: 90,
  butterfly_valve: 45,
  butterfly_valve_double_offset: 74,
  butterfly_valve_triple_offset: 218,
  diaphragm_valve_weir: 149,
  diaphragm_valve: 39,
  swing_check: 100,
  swing_check_straight: 50,
  lift_check: 600,
  lift_check_angle: 55,
  tilting_disc_check: 40,
  stop_check_globe: 400,
  stop_check_angle: 200,
  foot_valve_poppet: 420,
  foot_valve_hinged: 75,
};
const HEADS: Record<string, number> = { entrance_sharp: 0.5, entrance_inward: 0.78, exit: 1 };
const CHECK_VALVES: [id: string, multiple: number, n: number][] = [
  ['swing', 100, 45],
  ['swing-straight', 50, 75],
  ['lift', 600, 50],
  ['lift-angle', 55, 170],
  ['tilting-disc', 40, 100],
  ['tilting-disc-15', 120, 40],
  ['foot-poppet', 420, 20],
  ['foot-hinged', 75, 45],
];
const VALVES: Record<string, number> = { ball: 3, plug: 18, gate: 8, globe: 340, angle: 150, butterfly: 45 };
const WATER = 998.2;

const catalogue = loadCatalogue();

describe('Crane TP-410 (2009), K = N f_T', () => {
  for (const [id, multiple] of Object.entries(FITTINGS))
    it(`fitting ${id}: N ${multiple}`, () => {
      expect(catalogue.find('fitting', id)?.friction_multiple).toBe(multiple);
    });
  for (const [id, heads] of Object.entries(HEADS))
    it(`fitting ${id}: K ${heads}`, () => {
      expect(catalogue.find('fitting', id)?.k).toBe(heads);
    });
  for (const [id, multiple] of Object.entries(VALVES))
    it(`valve ${id}, wide open: N ${multiple}`, () => {
      expect(catalogue.find('valve', id)?.friction_multiple).toBe(multiple);
    });
  for (const [id, multiple, n] of CHECK_VALVES)
    it(`check valve ${id}: N ${multiple}, held open from ${n} / sqrt(rho)`, () => {
      const valve = catalogue.find('check_valve', id);
      expect(valve?.friction_multiple).toBe(multiple);
      expect(Math.abs((valve?.minimum_velocity ?? Number.NaN) - n / Math.sqrt(WATER))).toBeLessThanOrEqual(
        0.005,
      );
    });
});
