import { type RunBench, recordStandard } from "./run-bench";

/** What tells the room, by temperature alone: reads 0.1 °C high, and is good to 0.3 °C. */
export const recordAmbient = (bench: RunBench, tag: string): Promise<string> =>
  recordStandard(
    bench,
    tag,
    { kind: "ambient", driftHalfWidthCelsius: 0.2, basis: "invented" },
    {
      ...{ kind: "ambient", correctionCelsius: -0.1, expandedCelsius: 0.3, coverageFactor: 2 },
      note: "invented",
    },
  );
