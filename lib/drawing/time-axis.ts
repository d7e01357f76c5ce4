import type { Axis } from "@/lib/drawing/plot-frame";

export type TimeUnit = { readonly divisor: number; readonly label: string };

/** Seconds of a run in the unit a person would say: seconds, minutes or hours. */
export function timeUnit(seconds: number): TimeUnit {
  if (seconds <= 240) return { divisor: 1, label: "s" };
  if (seconds <= 3 * 3600) return { divisor: 60, label: "min" };
  return { divisor: 3600, label: "h" };
}

/** 1 h 02 min 30 s, without leading zeros where there are no hours. */
export function clockText(seconds: number): string {
  const whole = Math.round(seconds);
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  const rest = whole % 60;
  const pad = (value: number) => String(value).padStart(2, "0");
  if (hours > 0) return `${hours} h ${pad(minutes)} min ${pad(rest)} s`;
  return minutes > 0 ? `${minutes} min ${pad(rest)} s` : `${rest} s`;
}

/** The horizontal axis of a run, in its unit. */
export const timeAxis = (seconds: readonly [number, number], unit: TimeUnit, ticks: number): Axis => ({
  domain: [seconds[0] / unit.divisor, seconds[1] / unit.divisor],
  label: `time, ${unit.label}`,
  ticks,
});
