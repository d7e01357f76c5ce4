import type { CharacterisationFigures, FiguresAtTemperature } from "./characterisation-figures";

const two = (value: number): string => Number(value.toFixed(3)).toString();

const atOne = ({ celsius, axial, positions, stability }: FiguresAtTemperature): string => {
  const parts = [
    axial && `axial ± ${two(axial.halfWidthCelsius)}`,
    positions && `positions ± ${two(positions.halfWidthCelsius)}`,
    stability && `stability ± ${two(stability.halfWidthCelsius)} in ${two(stability.windowMinutes)} min`,
  ].filter(Boolean);
  return `${celsius} °C: ${parts.join(", ")}`;
};

/** Length, temperatures and half or full range in words: without these a figure means nothing. Kept within 600 characters. */
export const figuresStatement = (figures: CharacterisationFigures): string => {
  const head = `${figures.number}: half ranges in °C, over ${two(figures.lengthMillimetre)} mm`;
  const whole = `${head}. ${figures.temperatures.map(atOne).join("; ")}.`;
  if (whole.length <= 600) return whole;
  const all = figures.temperatures.map(({ celsius }) => celsius);
  return `${head}, at ${all.join(", ")} °C; the largest: axial ± ${two(largest(figures, "axial"))}, positions ± ${two(largest(figures, "positions"))}.`;
};

/** The largest half-width of a kind over the temperatures, °C. */
export const largest = (
  figures: CharacterisationFigures,
  kind: "axial" | "positions" | "stability",
): number => Math.max(...figures.temperatures.map((at) => at[kind]?.halfWidthCelsius ?? 0));
