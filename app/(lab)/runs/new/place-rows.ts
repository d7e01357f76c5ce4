import type { NewRunView } from "@/lib/views/run/new-run";

export type PlaceRow = {
  readonly key: string;
  readonly kind: "reference" | "sensor" | "shorted";
  readonly tag: string;
  readonly type: string | null;
  readonly note: string;
  readonly place: string;
  readonly channel: string;
};

/** A load to begin with: references first and last of the scan, the sensors between them, a shorted channel at its end. */
export const proposeRows = (
  references: NewRunView["references"],
  sensors: NewRunView["waiting"],
): readonly PlaceRow[] => {
  const referenceRow = (reference: NewRunView["references"][number], index: number) => ({
    key: reference.tag,
    kind: "reference" as const,
    tag: reference.tag,
    type: reference.type,
    note: "reference",
    place: `R${index + 1}`,
  });
  const sensorRows = sensors.map((sensor, index) => ({
    key: sensor.tag,
    kind: "sensor" as const,
    tag: sensor.tag,
    type: sensor.type,
    note: `${sensor.serial}, ${sensor.customer}`,
    place: String(index + 1),
  }));
  const [first, ...others] = references.map(referenceRow);
  const shorted = {
    key: "shorted",
    kind: "shorted" as const,
    tag: "",
    type: null,
    note: "shorted channel",
    place: "zero",
  };
  return [...(first ? [first] : []), ...sensorRows, ...others, shorted].map((row, index) => ({
    ...row,
    channel: String(101 + index),
  }));
};
