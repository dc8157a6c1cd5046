/** What the bot lets itself be woken for. Stored by name, one alarm a name. */
import type { EpochMs } from '../../core/units.ts';

export type Alarm =
  | { is: 'weather' }
  | { is: 'line' }
  /** Each outlook has its own, so that a forecast that comes while one is due does not move it on to the next. */
  | { is: 'outlook'; dueMs: EpochMs };

export const alarmName = (alarm: Alarm): string =>
  alarm.is === 'outlook' ? `outlook ${alarm.dueMs}` : alarm.is;

/** Null = an alarm that this version does not know. */
export const alarmOf = (name: string): Alarm | null => {
  if (name === 'weather' || name === 'line') return { is: name };
  const outlook = /^outlook (\d+)$/.exec(name);
  return outlook ? { is: 'outlook', dueMs: Number(outlook[1]) } : null;
};
