import type { ProfileAnswer, SiteConditions } from '../../study/answer.js';
import { type Block, heading, paragraph } from '../document.js';
import type { Figures } from '../figures.js';
import { noState } from '../standing.js';

/** Height as a lead says it: up or down from the pump. */
function heightText(height: number, figures: Figures): string {
  const size = figures.say('profiles.height', 'length', Math.abs(height));
  if (Math.abs(height) < 0.15) return 'level with the pump';
  return height > 0 ? `${size} above the pump` : `${size} below the pump`;
}

function lineText(profile: ProfileAnswer, figures: Figures): string {
  const hose = figures.say('profiles.hose', 'length', profile.hose);
  const onMap = figures.say('profiles.on_map', 'length', profile.onMap);
  const climb = figures.say('profiles.climb', 'length', Math.abs(profile.climb));
  const way =
    Math.abs(profile.climb) < 0.15 ? 'ends level' : profile.climb > 0 ? `climbs ${climb}` : `drops ${climb}`;
  return `From ${profile.outlet} to ${profile.to}: ${hose} of hose along the slope (${onMap} on the map), ${way}.`;
}

function pressureText({ pressure, flow }: ProfileAnswer['highest'], figures: Figures, site: SiteConditions) {
  const none = noState(pressure, site, flow);
  if (none === 'no_water') return 'and no water gets there';
  if (none) return 'where water would boil: this flow cannot be had';
  return `with ${figures.say('profiles.pressure', 'pressure', pressure)} in the hose`;
}

function pointText(
  label: string,
  point: ProfileAnswer['highest'],
  figures: Figures,
  site: SiteConditions,
): string {
  const pressure = pressureText(point, figures, site);
  const distance = figures.say('profiles.distance', 'length', point.distance);
  return `${label}: ${heightText(point.height, figures)}, ${distance} of hose out, ${pressure}.`;
}

/** How the hose lies: slope length and height, never one for the other. */
export function groundSection(
  { profiles, site }: { profiles: ProfileAnswer[]; site: SiteConditions },
  figures: Figures,
): Block[] {
  if (profiles.length === 0) return [];
  return [
    heading('How the line lies'),
    ...profiles.flatMap((profile): Block[] => {
      const blocks = [paragraph(lineText(profile, figures))];
      if (profile.overRidge)
        blocks.push(paragraph(pointText('Goes over a RIDGE', profile.highest, figures, site), 'care'));
      else blocks.push(paragraph(pointText('Highest point', profile.highest, figures, site)));
      if (profile.lowest.height < -0.15)
        blocks.push(paragraph(pointText('Lowest point', profile.lowest, figures, site)));
      if (profile.takenLevel > 0) {
        const level = figures.say('profiles.taken_level', 'length', profile.takenLevel);
        blocks.push(
          paragraph(
            `Of this hose ${level} is taken as level: the layout gives it no rise and no terrain.`,
            'care',
          ),
        );
      }
      return blocks;
    }),
  ];
}
