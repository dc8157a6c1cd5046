import type { Minutes } from '../../core/units.ts';
import { outlookPicture } from '../outlook/picture.ts';
import { outlookText } from '../outlook/words.ts';
import { isoOrNull } from '../parts/figures.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { Data, Iso, TellingKind, TellingOf } from '../telling-kind.ts';

/** One of six in the evening says "tomorrow": it must not come after midnight. */
const OUTLOOK_HOLDS_MIN: Minutes = 6 * 60;

const outlookData = ({ station, plan }: TellingOf<'outlook'>, iso: Iso): Data => {
  if (plan.plan === 'none') return { station, forecastAt: isoOrNull(iso, plan.newestMs) };
  const { heat, frost, rainInches, issuedMs, dayMs } = plan.outlook;
  return {
    station,
    forecastAt: iso(issuedMs),
    day: iso(dayMs),
    dig: plan.dig.map(({ fromMs, toMs }) => ({ from: iso(fromMs), to: iso(toMs) })),
    heat: heat.likely,
    chance: heat.chance,
    highF: heat.peakF,
    highAt: isoOrNull(iso, heat.peakMs),
    limitF: heat.limitF,
    stopToppingAt: isoOrNull(iso, heat.stopToppingMs),
    stopAt: isoOrNull(iso, heat.stopAtMs),
    resumeAt: isoOrNull(iso, heat.resumeAtMs),
    frost: frost.likely,
    lowF: frost.lowF,
    lowAt: isoOrNull(iso, frost.lowMs),
    rainInches,
  };
};

export const outlook: TellingKind<'outlook'> = {
  text: outlookText,
  data: outlookData,
  buttons: noButtons,
  picture: outlookPicture,
  rings: never,
  holdsMin: OUTLOOK_HOLDS_MIN,
};
