import { mayManage } from '../roster.ts';
import { refused, taken } from './speaking.ts';
import type { Accepted, IntentOf, Speaking } from './speaking.ts';

/** Foreman and grower teach a word of their crew; that it means no order or alarm is seen to by the reading. */
export const acceptTaught = ({ said, means }: IntentOf<'teach'>, speaking: Speaking): Accepted =>
  mayManage(speaking.speaker)
    ? taken(speaking, null, [{ kind: 'word-taught', said, means }])
    : refused({ refused: 'not-allowed', what: 'teach' });
