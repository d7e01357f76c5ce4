import type { PromisePolicy } from "./policy";

const hour = 3_600_000;
const day = 24 * hour;

type Hours = Pick<PromisePolicy, "dayStartsHour" | "dayEndsHour" | "workingDays">;

const midnightOf = (at: number): number => Math.floor(at / day) * day;

/** Days of the week from 1, Monday: 1970-01-01 was a Thursday. */
const isWorkingDay = (at: number, { workingDays }: Hours): boolean =>
  workingDays.includes(((Math.floor(at / day) + 3) % 7) + 1);

/** The moment itself where somebody works then, or the next beginning of work. */
export const nextWork = (at: number, hours: Hours): number => {
  let from = at;
  for (;;) {
    const start = midnightOf(from) + hours.dayStartsHour * hour;
    const end = midnightOf(from) + hours.dayEndsHour * hour;
    if (isWorkingDay(from, hours) && from < end) return Math.max(from, start);
    from = midnightOf(from) + day;
  }
};

/** When so many hours of work that begins then are done; nights and free days pass without counting. */
export const afterWork = (at: number, workHours: number, hours: Hours): number => {
  let left = workHours * hour;
  let from = nextWork(at, hours);
  for (;;) {
    const end = midnightOf(from) + hours.dayEndsHour * hour;
    if (left <= end - from) return from + left;
    left -= end - from;
    from = nextWork(end, hours);
  }
};

/** The day, so many working days after that of the moment; nought: its own, or the next that is one. */
export const workingDayAfter = (at: number, count: number, hours: Hours): string => {
  let from = midnightOf(at);
  for (let left = count; left > 0 || !isWorkingDay(from, hours); from += day)
    if (isWorkingDay(from, hours)) left -= 1;
  return new Date(from).toISOString().slice(0, 10);
};
