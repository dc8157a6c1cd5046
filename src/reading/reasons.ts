import type { Intent } from '../core/intent.ts';

/** Why the digging is stopped, where what is told beside the order says so: a warm root, frozen crowns. */
export const withReasons = (intents: readonly Intent[]): Intent[] => {
  const isWarm = intents.some((intent) => intent.do === 'measure-root');
  const isFrozen = intents.some((intent) => intent.do === 'check-crown' && !intent.sound);
  const hold = isFrozen ? 'frost' : isWarm ? 'heat' : 'other';
  return intents.map((intent) =>
    intent.do === 'order-stop' && intent.hold === 'other' ? { ...intent, hold } : intent,
  );
};
