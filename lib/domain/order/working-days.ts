const dayMilliseconds = 86_400_000;
const at = (day: string): number => Date.parse(`${day}T00:00:00Z`);

/** Saturday and Sunday are none; the laboratory's own holidays are not known here. */
export const isWorkingDay = (day: string): boolean => {
  const weekday = new Date(at(day)).getUTCDay();
  return weekday !== 0 && weekday !== 6;
};

export const dayAfter = (day: string, days: number): string =>
  new Date(at(day) + days * dayMilliseconds).toISOString().slice(0, 10);

/** Working days after `from` up to and with `to`; 0 where `to` is not later. */
export const workingDaysBetween = (from: string, to: string): number => {
  const days = Math.max(0, Math.round((at(to) - at(from)) / dayMilliseconds));
  const [weeks, rest] = [Math.floor(days / 7), days % 7];
  let count = weeks * 5;
  for (let step = 1; step <= rest; step++) if (isWorkingDay(dayAfter(from, step))) count += 1;
  return count;
};

/** Monday and Sunday of the day's week. */
export const weekOf = (day: string): { readonly from: string; readonly to: string } => {
  const weekday = (new Date(at(day)).getUTCDay() + 6) % 7;
  return { from: dayAfter(day, -weekday), to: dayAfter(day, 6 - weekday) };
};
