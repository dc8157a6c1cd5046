/** What work costs by the wall clock and in processor time, which other work on the machine disturbs less. */
export interface Cost {
  wallMs: number;
  cpuMs: number;
}

export const cost = async (work: () => Promise<unknown>): Promise<Cost> => {
  const [begunMs, begun] = [performance.now(), process.cpuUsage()];
  await work();
  const { user, system } = process.cpuUsage(begun);
  return { wallMs: performance.now() - begunMs, cpuMs: (user + system) / 1000 };
};

export const median = (numbers: readonly number[]): number =>
  [...numbers].sort((a, b) => a - b)[numbers.length >> 1] ?? 0;

export const rounded = (number: number, digits = 2): number => Number(number.toFixed(digits));
