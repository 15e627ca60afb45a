import { Drafting, type Setting, topic } from '../draft.js';
import { levelsTo } from '../levels.js';
import { engine, place } from '../names.js';
import { hoseFacts } from '../parts.js';
import type { Draw } from '../random.js';
import type { HoseSize } from '../rules/rule-set.js';

/** Sides in ft or m; what is asked tells which are used. */
export type VolumeFacts =
  | {
      readonly ask: 'box' | 'box-weight';
      readonly length: number;
      readonly width: number;
      readonly height: number;
    }
  | { readonly ask: 'weight'; readonly volume: number }
  | { readonly ask: 'cylinder' | 'cylinder-weight'; readonly diameter: number; readonly height: number }
  | { readonly ask: 'hose'; readonly hose: HoseSize; readonly length: number }
  | { readonly ask: 'left'; readonly volume: number; readonly hose: HoseSize; readonly length: number };

const ASKED: Readonly<Record<number, readonly VolumeFacts['ask'][]>> = {
  1: ['box', 'weight'],
  2: ['box', 'weight', 'hose'],
  3: ['box-weight', 'cylinder', 'hose'],
  4: ['cylinder', 'cylinder-weight', 'left'],
  5: ['cylinder-weight', 'left'],
};

function drawFacts(draw: Draw, setting: Setting): VolumeFacts {
  const us = setting.units === 'us';
  const side = (least: number, most: number) =>
    us ? draw.stepped(least, most, setting.level < 3 ? 1 : 0.5) : draw.stepped(least * 0.3, most * 0.3, 0.1);
  const tidy = (value: number) => Math.round(value * 10) / 10;
  const hose = draw.pick<HoseSize>(['1', '1.5', '1.75', '2.5', '3']);
  const length = us ? 100 * draw.whole(4, 15) : 30 * draw.whole(4, 15);
  const volume = us ? 50 * draw.whole(4, 30) : 250 * draw.whole(3, 22);
  const ask = draw.pick(ASKED[setting.level]);
  switch (ask) {
    case 'box':
    case 'box-weight':
      return { ask, length: tidy(side(5, 10)), width: tidy(side(4, 7)), height: tidy(side(2, 6)) };
    case 'weight':
      return { ask, volume };
    case 'cylinder':
    case 'cylinder-weight':
      return { ask, diameter: tidy(side(3, 10)), height: tidy(side(3, 9)) };
    case 'hose':
      return { ask, hose, length };
    case 'left':
      return { ask, hose: draw.pick<HoseSize>(['1.75', '2.5', '3']), length, volume };
  }
}

/** Gallons that are not US ones, and litres printed as gallons, are what goes wrong here. */
function wrongUnits(d: Drafting, symbol: string, formula: string): void {
  const us = d.setting.units === 'us';
  d.slip('wrong-gallon', {
    formulas: { [symbol]: us ? `(${formula}) / 1.201` : `(${formula}) / 4.546` },
    why: us
      ? 'Imperial gallons were counted: a US gallon is smaller.'
      : 'Imperial gallons were counted in place of litres.',
  });
  d.slip('unit-slip', {
    formulas: { [symbol]: us ? `(${formula}) / 7.48` : `(${formula}) / 10` },
    why: us ? 'Cubic feet were given as gallons: each holds 7.48.' : 'The point was moved one place too far.',
  });
}

function posed(facts: VolumeFacts, setting: Setting) {
  const d = new Drafting(setting);
  const { unit, wording, rules } = setting;
  const us = setting.units === 'us';
  const at = place(wording);
  const perCubic = () =>
    d.rule(
      'k',
      us ? 'gallons that fill a cubic foot' : 'litres that fill a cubic metre',
      rules.water.per_cubic,
      '',
      rules.water.source,
    );
  const weigh = () => {
    d.rule(
      'w',
      us ? 'weight of a gallon of water' : 'mass of a litre of water',
      rules.water.mass,
      unit.density,
      rules.water.source,
    );
    d.step('W', us ? 'Weight of the water' : 'Mass of the water', 'V * w', unit.mass);
    d.slip('wrong-coefficient', {
      set: { w: us ? 10 : 0.8 },
      why: us
        ? 'The 10 lb of an imperial gallon were used: a US gallon is lighter.'
        : 'The density of fuel was used: a litre of water is a kilogram.',
    });
    d.slip('feet-and-psi-inverted', {
      formulas: { W: us ? 'V * w / 2.205' : 'V * w * 2.205' },
      why: us ? 'Kilograms were given as pounds.' : 'Pounds were given as kilograms.',
    });
  };
  const toVolume = (cubic: string) => {
    perCubic();
    const formula = `${cubic} / (1 ${us ? 'ft' : 'm'}^3) * k * (1 ${us ? 'gal' : 'litre'})`;
    d.step('V', us ? 'The same in gallons' : 'The same in litres', formula, unit.volume);
    wrongUnits(d, 'V', formula);
  };
  switch (facts.ask) {
    case 'box':
    case 'box-weight': {
      const l = d.give('L', 'length', facts.length, unit.length);
      const b = d.give('B', 'width', facts.width, unit.length);
      const h = d.give('H', 'depth of the water', facts.height, unit.length);
      d.step('A', 'Volume of the tank', 'L * B * H', unit.cubic);
      d.slip('half-sum', { formulas: { A: 'L * B * H / 2' }, why: 'The volume was halved, as of a wedge.' });
      toVolume('A');
      if (facts.ask === 'box-weight') weigh();
      const asked =
        facts.ask === 'box'
          ? 'How much water does it hold?'
          : us
            ? 'What does the water in it weigh?'
            : 'What is the mass of the water in it?';
      return d.draft(
        wording.pick([
          `A folding tank at ${at} is ${l} long and ${b} wide, and filled ${h} deep. ${asked}`,
          `A rectangular tank on ${engine(wording)} measures ${l} by ${b} by ${h} inside and is full. ${asked}`,
        ]),
        facts.ask === 'box' ? 'water in the tank' : 'weight of the water',
        { sketch: [{ kind: 'source', what: 'tank', label: `tank, ${l} × ${b} × ${h}` }] },
      );
    }
    case 'weight': {
      const v = d.give('V', 'water in the tank', facts.volume, unit.volume);
      weigh();
      d.slip('unit-slip', {
        formulas: { W: us ? 'V * w * 7.48' : 'V * w / 10' },
        why: us
          ? 'The weight of a cubic foot was used for a gallon.'
          : 'The point was moved one place too far.',
      });
      d.slip('half-sum', { formulas: { W: 'V * w / 2' }, why: 'Half the tank was counted.' });
      return d.draft(
        wording.pick([
          `The tank of ${engine(wording)} is filled with ${v}. ${us ? 'What does the water weigh?' : 'What is the mass of the water?'}`,
          `How many ${us ? 'pounds' : 'kilograms'} does ${v} of water add to a truck?`,
        ]),
        'weight of the water',
      );
    }
    case 'cylinder':
    case 'cylinder-weight': {
      const a = d.give('D', 'inside diameter', facts.diameter, unit.length);
      const h = d.give('H', 'depth of the water', facts.height, unit.length);
      d.step('A', 'Volume of the tank', '0.7854 * D^2 * H', unit.cubic);
      d.slip('bore-not-squared', {
        formulas: { A: `0.7854 * D * H * (1 ${unit.l})` },
        why: 'The diameter was not squared.',
      });
      d.slip('half-sum', {
        formulas: { A: '3.1416 * D^2 * H' },
        why: 'The diameter was used for the radius: that makes four times the water.',
      });
      toVolume('A');
      if (facts.ask === 'cylinder-weight') weigh();
      const asked =
        facts.ask === 'cylinder'
          ? 'How much water does it hold?'
          : us
            ? 'What does the water in it weigh?'
            : 'What is the mass of the water in it?';
      return d.draft(
        wording.pick([
          `A round tank at ${at} is ${a} across inside and filled ${h} deep. ${asked}`,
          `An upright cylindrical tank has an inside diameter of ${a}; the water stands ${h} deep. ${asked}`,
        ]),
        facts.ask === 'cylinder' ? 'water in the tank' : 'weight of the water',
      );
    }
    case 'hose':
    case 'left': {
      const hose = hoseFacts(setting, facts.hose);
      const a = d.give('d', 'inside diameter of the hose', hose.bore, unit.bore, hose.name);
      const l = d.give('L', 'length of the hose', facts.length, unit.length);
      const v = facts.ask === 'left' ? d.give('T', 'water in the tank', facts.volume, unit.volume) : '';
      d.cite('a hose is taken as a cylinder of its nominal bore', 'NWCG Firefighter Math 3.2');
      const formula = '0.7854 * d^2 * L';
      d.step('V', 'Water in the hose', formula, unit.volume, { decimals: 0 });
      d.slip('bore-not-squared', { formulas: { V: `0.7854 * d * L * (1 ${unit.d})` } });
      d.slip('half-sum', {
        formulas: { V: '3.1416 * d^2 * L' },
        why: 'The diameter was used for the radius: that makes four times the water.',
      });
      wrongUnits(d, 'V', formula);
      if (facts.ask === 'hose')
        return d.draft(
          wording.pick([
            `How much water fills ${l} of ${a} hose?`,
            `A lay at ${at} is ${l} of ${a} hose. How much water is in it when it is charged?`,
          ]),
          'water in the hose',
          { sketch: [{ kind: 'hose', label: `${l} of ${a}` }] },
        );
      d.step('R', 'Water left in the tank', 'T - V', unit.volume);
      d.slip('line-fill-forgotten', { formulas: { R: 'T' } });
      d.slip('loss-for-pressure', {
        formulas: { R: 'V' },
        why: 'The water in the hose was given in place of what is left.',
      });
      d.bound('R', 50, 20000);
      return d.draft(
        wording.pick([
          `${engine(wording)} starts with ${v} in its tank and fills a dry lay of ${l} of ${a} hose from it. How much is left in the tank?`,
          `A lay of ${l} of ${a} hose at ${at} is charged from a tank that held ${v}. What is left in the tank when the hose is full and nothing flows yet?`,
        ]),
        'water left in the tank',
        {
          sketch: [
            { kind: 'source', what: 'tank', label: `tank, ${v}` },
            { kind: 'hose', label: `${l} of ${a}` },
          ],
        },
      );
    }
  }
}

export const volume = topic<VolumeFacts>({
  id: 'volume',
  title: 'Volume and weight of water',
  levels: levelsTo(3),
  draw: drawFacts,
  pose: posed,
});
