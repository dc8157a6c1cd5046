import { phrased } from './phrased.ts';
import type { About, Sign } from './sign.ts';

const ask = (about: About): Sign => ({ topic: 'ask', about, own: false });
/** Asked about the speaker's own truck. */
const askOwn = (about: About): Sign => ({ topic: 'ask', about, own: true });

export const questionSigns = [
  phrased('line', ask('line')),
  phrased('leave', ask('leave'), `<shift> <?>`),
  phrased('fleet', ask('fleet')),
  phrased(
    'tons',
    ask('tons'),
    `{tons} <?>
     {tons} ({of}) <span>|<field>|<truck>
     <span> {tons}`,
  ),
  phrased('ownTons', askOwn('tons')),
  phrased(
    'loads',
    ask('loads'),
    `{loads} <?>
     {loads} ({of}) <span>|<field>|<truck>
     <span> {loads}`,
  ),
  phrased('ownLoads', askOwn('loads')),
  phrased('left', ask('left')),
  phrased('board', ask('board')),
  phrased('truck', ask('truck')),
  phrased('whereTo', ask('where-to')),
  phrased('mayDig', ask('may-dig')),
  phrased('unseenNotice', ask('unseen-notice')),
  phrased('outlookTomorrow', ask('outlook-tomorrow'), `({tell}) {outlook} ({for}) {tomorrow}`),
  phrased('outlookToday', ask('outlook-today'), `({tell}) {outlook} ({for}) <span>`),
  phrased('outlook', ask('outlook')),
  phrased('tickets', ask('tickets')),
  phrased('people', ask('people'), `{people}`),
  phrased('trucks', ask('trucks'), `{trucks}`),
  phrased('fields', ask('fields'), `{fields}`),
  phrased('stations', ask('stations'), `{stations}`),
  phrased('limits', ask('limits'), `{limits}`),
  phrased('help', ask('help')),
];
