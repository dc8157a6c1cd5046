/** A binary heap of events, earliest first; equal times in the order they were put in. */
export interface Event {
  atMin: number;
  order: number;
  what: 'noise' | 'join' | 'weighed' | 'unloaded' | 'break' | 'repair' | 'turn' | 'home' | 'loaded';
  /** Truck, piler or fleet number, as `what` needs. */
  who: number;
  /** An `unloaded` of an older turn of the piler is void. */
  turn: number;
}

const before = (a: Event, b: Event): boolean =>
  a.atMin < b.atMin || (a.atMin === b.atMin && a.order < b.order);

export const push = (heap: Event[], event: Event): void => {
  let at = heap.length;
  heap.push(event);
  while (at > 0) {
    const up = (at - 1) >> 1;
    const parent = heap[up];
    if (parent === undefined || !before(event, parent)) break;
    heap[at] = parent;
    at = up;
  }
  heap[at] = event;
};

export const pop = (heap: Event[]): Event | null => {
  const first = heap[0];
  const last = heap.pop();
  if (first === undefined || last === undefined) return null;
  if (heap.length > 0) sink(heap, last);
  return first;
};

const sink = (heap: Event[], event: Event): void => {
  let at = 0;
  for (;;) {
    const left = heap[2 * at + 1];
    const right = heap[2 * at + 2];
    if (left === undefined) break;
    const takeRight = right !== undefined && before(right, left);
    const child = takeRight ? right : left;
    if (!before(child, event)) break;
    heap[at] = child;
    at = 2 * at + (takeRight ? 2 : 1);
  }
  heap[at] = event;
};
