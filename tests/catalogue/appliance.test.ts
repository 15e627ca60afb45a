import { describe, expect, it } from 'vitest';
import { loadCatalogue } from '../../src/catalogue/load.js';
import { APPLIANCE_POLICIES, applianceLoss } from '../../src/catalogue/schema/appliance.js';

const PSI = 6894.757293168;
const catalogue = loadCatalogue();

function lossOf(kind: 'appliance' | 'branch', id: string, policy: (typeof APPLIANCE_POLICIES)[number]) {
  const part = catalogue.find(kind, id);
  if (!part) throw new Error(`no ${kind} ${id}`);
  return applianceLoss(part, policy);
}

describe('what an appliance costs by each rule', () => {
  it('is 5 psi by the wildland rule', () => {
    const loss = lossOf('branch', 'gated-wye', 'wildland');
    expect(loss.law === 'fixed' && loss.loss / PSI).toBeCloseTo(5, 9);
  });

  it('is nothing by the engineering rule where nothing is known of the part', () => {
    expect(lossOf('branch', 'gated-wye', 'engineering')).toEqual({ law: 'fixed', loss: 0 });
  });

  it('is 10 psi from 350 gpm up by the structural rule', () => {
    const loss = lossOf('appliance', 'siamese', 'structural');
    if (loss.law !== 'bands') throw new Error(loss.law);
    expect(loss.bands.map((band) => Math.round(band.loss / PSI))).toEqual([0, 10]);
    expect(loss.bands[1].from).toBeCloseTo((350 * 231 * 0.0254 ** 3) / 60, 12);
  });

  it('is told for every appliance and branch by every rule', () => {
    for (const kind of ['appliance', 'branch'] as const)
      for (const id of catalogue.ids(kind))
        for (const policy of APPLIANCE_POLICIES)
          expect(lossOf(kind, id, policy).law, `${id} ${policy}`).toBeTruthy();
  });

  it('is its own by any rule where a layout brings one', () => {
    for (const policy of APPLIANCE_POLICIES)
      expect(applianceLoss({ k: 2 }, policy)).toMatchObject({ law: 'k', k: 2 });
  });

  it('never lets a check valve pass for a plain part', () => {
    const oneWay = catalogue.ids('fitting').filter((id) => catalogue.find('fitting', id)?.one_way);
    expect(oneWay).toEqual(catalogue.ids('fitting').filter((id) => /check|foot_valve/.test(id)));
    expect(catalogue.find('appliance', 'check-and-bleeder')?.one_way).toBe(true);
  });
});
