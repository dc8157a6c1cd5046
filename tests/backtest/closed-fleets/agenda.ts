/** What is to happen, earliest first; of equal times, what was put down first. */
export interface Agenda {
  put: (atMin: number, happen: () => void) => void;
  /** Lets all of it happen up to `untilMin`; the clock is handed to `setNow`. */
  run: (untilMin: number, setNow: (nowMin: number) => void) => void;
}

export const newAgenda = (): Agenda => {
  const entries: { atMin: number; happen: () => void }[] = [];
  return {
    put: (atMin, happen) => {
      let place = entries.length;
      while (place > 0 && (entries[place - 1]?.atMin ?? 0) <= atMin) place -= 1;
      // Latest first, so that the next one is popped.
      entries.splice(place, 0, { atMin, happen });
    },
    run: (untilMin, setNow) => {
      for (let next = entries.at(-1); next !== undefined && next.atMin <= untilMin; next = entries.at(-1)) {
        entries.pop();
        setNow(next.atMin);
        next.happen();
      }
    },
  };
};
