import type { Intent } from '../core/intent.ts';

/** An order to the whole crew. */
export const isOrderGiven = ({ do: what }: Intent): boolean =>
  what === 'order-stop' || what === 'order-resume';
