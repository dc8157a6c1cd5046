import type { LanguageWords } from '../language-words.ts';

export const causes: LanguageWords['causes'] = {
  heat: 'heat hot warm temps temperature temperatures',
  frost: 'frost frozen freeze freezing froze ice',
  mud: 'mud muddy wet rain raining',
  other: `flat tire tires axle belt engine motor brakes brake hydraulics hydraulic hose transmission clutch battery
    radiator bearing wheel starter alternator fuel diesel highway road ditch hill bridge overheated overheating stuck`,
};
