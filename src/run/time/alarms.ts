/** What the bot lets itself be woken for. Stored by name, one alarm a name. */
import type { EpochMs } from '../../core/units.ts';

export type Alarm =
  | { is: 'weather' }
  | { is: 'line' }
  /** A question whether somebody is in danger has had its minute; `number` is the question's. */
  | { is: 'danger'; number: number }
  /** Each outlook has its own, so that a forecast that comes while one is due does not move it on to the next. */
  | { is: 'outlook'; dueMs: EpochMs };

export const alarmName = (alarm: Alarm): string => {
  switch (alarm.is) {
    case 'outlook':
      return `outlook ${alarm.dueMs}`;
    case 'danger':
      return `danger ${alarm.number}`;
    case 'weather':
    case 'line':
      return alarm.is;
  }
};

/** Null = an alarm that this version does not know. */
export const alarmOf = (name: string): Alarm | null => {
  if (name === 'weather' || name === 'line') return { is: name };
  const danger = /^danger (\d+)$/.exec(name);
  if (danger) return { is: 'danger', number: Number(danger[1]) };
  const outlook = /^outlook (\d+)$/.exec(name);
  return outlook ? { is: 'outlook', dueMs: Number(outlook[1]) } : null;
};
