/** "C-2026-0001": the year of sign-off and a gapless count within it. */
export const certificateNumber = (year: number, count: number): string =>
  `C-${year}-${String(count).padStart(4, "0")}`;
