import type { ListSensor } from "./read-list";

export type LineGroup = { readonly position: number; readonly sensors: readonly ListSensor[] };

/** The sensors of a list by the order line they belong to, lines in the order of the order. */
export const groupByLine = (sensors: readonly ListSensor[]): readonly LineGroup[] =>
  [...new Set(sensors.map(({ position }) => position))]
    .toSorted((left, right) => left - right)
    .map((position) => ({ position, sensors: sensors.filter((sensor) => sensor.position === position) }));
