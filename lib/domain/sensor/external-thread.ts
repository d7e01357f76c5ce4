import type { SensorBead } from "./thread";
import { isDone, type SensorState } from "./transitions";

/** The life of a sensor that an external provider measures: no run, no review and no certificate of ours. */
export const externalThread = (
  state: SensorState,
  external: { readonly provider: string; readonly report: object | null },
): readonly SensorBead[] => {
  const isReported = isDone(state) && external.report !== null;
  const isGone = state === "collected";
  return [
    { key: "ordered", label: "Ordered", state: "done" },
    { key: "received", label: "Received", state: "done" },
    {
      key: "measured",
      label: `Measured by ${external.provider}`,
      state: isReported ? "done" : isGone ? "next" : "now",
    },
    {
      key: "collected",
      label: isReported || !isGone ? "Collected" : "Handed back",
      state: isGone ? (isReported ? "done" : "stopped") : isReported ? "now" : "next",
    },
  ];
};
