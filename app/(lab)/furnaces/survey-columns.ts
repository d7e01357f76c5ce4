import type { SurveyKind } from "@/lib/domain/furnace/survey-kinds";
import type { GridColumn } from "./row-grid.client";

const stops: readonly GridColumn[] = [
  { key: "millimetre", header: "Depth", unit: "mm" },
  { key: "probe", header: "Probe" },
  { key: "monitor", header: "Monitor" },
  { key: "minutes", header: "Time, if read", unit: "min" },
];

/** The fields of a survey's lines, in the order they are read off. */
export const surveyColumns: Readonly<Record<SurveyKind, readonly GridColumn[]>> = {
  axial: stops,
  immersion: stops,
  positions: [
    { key: "arrangement", header: "Arrangement" },
    { key: "place", header: "Position", isText: true },
    { key: "sensor", header: "Thermocouple", isText: true },
    { key: "value", header: "Reading" },
  ],
  stability: [
    { key: "minutes", header: "Time", unit: "min" },
    { key: "value", header: "Monitor" },
  ],
};

export const surveyLines: Readonly<Record<SurveyKind, string>> = {
  axial: "Stop",
  immersion: "Stop",
  positions: "Reading",
  stability: "Reading",
};

type Plan = {
  readonly fromMillimetre: number;
  readonly toMillimetre: number;
  readonly windowMinutes: number;
};
type Lines = readonly Readonly<Record<string, string>>[];

const tidy = (value: number): string => String(Number(value.toFixed(1)));

/** Seven stops over the stated length, there and back. */
const axialLines = ({ fromMillimetre, toMillimetre }: Plan): Lines => {
  const there = Array.from(
    { length: 7 },
    (_, i) => fromMillimetre + ((toMillimetre - fromMillimetre) * i) / 6,
  );
  return [...there, ...there.toReversed()].map((millimetre) => ({ millimetre: tidy(millimetre) }));
};

/** As many thermocouples as positions, each moved on by one, and once more to close the ring: every difference cancels. */
const exchangeLines = (places: readonly string[]): Lines =>
  Array.from({ length: places.length + 1 }, (_, turn) =>
    places.map((place, i) => ({
      arrangement: String(turn + 1),
      place,
      sensor: `TC-${((i + turn) % places.length) + 1}`,
    })),
  ).flat();

const immersionLines = ({ fromMillimetre, toMillimetre }: Plan): Lines => {
  const middle = (fromMillimetre + toMillimetre) / 2;
  return [-100, -75, -50, -25, 0, 25].map((step) => ({ millimetre: tidy(Math.max(0, middle + step)) }));
};

/** Lines with what is already known written in, so that only readings are left to type. */
export const surveyLinesFor = (kind: SurveyKind, plan: Plan, places: readonly string[]): Lines => {
  switch (kind) {
    case "axial":
      return axialLines(plan);
    case "immersion":
      return immersionLines(plan);
    case "positions":
      return exchangeLines(places);
    case "stability":
      return Array.from({ length: Math.ceil(plan.windowMinutes) + 6 }, (_, minutes) => ({
        minutes: String(minutes),
      }));
  }
};
