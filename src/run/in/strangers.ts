import { withFacts } from '../../core/harvest/fold.ts';
import type { Fact } from '../../core/book/facts.ts';
import type { Telling } from '../../core/telling.ts';
import { headerOf, readOn } from './speech.ts';
import type { Incoming } from './speech.ts';
import { nothing } from '../../core/turn.ts';
import type { Understood } from '../../core/turn.ts';

/** Somebody who is on no list: an emergency counts from anyone; else one polite line, once, and the managers are told. */
export const hearStranger = ({ heard, harvest, means }: Incoming): Understood => {
  if (heard.event.is !== 'message') return nothing(harvest);
  const { platform, user, userName, sentMs } = heard;
  const addressed = heard.event.addressed || heard.room === null;
  const reading = readOn(harvest, means, { text: heard.event.text, speaker: null, sentMs, addressed });
  const header = headerOf(heard, null, sentMs, 0);
  const told = (fact: Fact, answer: Telling): Understood => ({
    facts: [fact],
    replies: [{ say: answer }],
    harvest: withFacts(harvest, [fact]),
  });
  const emergency =
    reading.found === 'intents'
      ? reading.intents.find((intent) => intent.do === 'call-emergency')
      : undefined;
  if (emergency) {
    const fact: Fact = {
      ...header,
      kind: 'emergency-called',
      words: emergency.words,
      caller: userName ?? user,
    };
    return told(fact, { tell: 'emergency-answer' });
  }
  const isMeant = addressed || reading.found !== 'chatter';
  if (!isMeant || harvest.strangers.has(`${platform}:${user}`)) return nothing(harvest);
  return told({ ...header, kind: 'stranger-heard', platform, user }, { tell: 'stranger-answer' });
};
