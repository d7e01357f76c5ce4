import s5 from "@/lib/domain/evidence/examples/ea4-02-s5.json";
import { recordEquipment } from "@/lib/operations/equipment/record";
import { execute } from "@/lib/operations/execute";
import { createRun } from "@/lib/operations/run/create";
import { inService, wholeRecord } from "./in-service";
import { accepted, lineInput, orderInput, received } from "./orders";
import { passGate } from "./pass-gate";
import { benchClock, type RunBench, recordBareTube, recordStandard } from "./run-bench";

/** EA-4/02 example S5 entered as a laboratory would enter it: its inputs published, its tags and dates ours. */

const note = "EA-4/02 example S5; certificate number, issuer and dates are ours";

const reference = (bench: RunBench, tag: string, deviationMicrovolt: number) =>
  recordStandard(
    bench,
    tag,
    {
      kind: "reference",
      type: "R",
      protection: "alumina-sheath",
      driftHalfWidthCelsius: 0.3,
      inhomogeneityRelativeHalfWidth: 0,
      basis: "EA-4/02 example S5 has no line for the inhomogeneity of the references",
    },
    {
      kind: "reference",
      points: [{ celsius: 1000, deviationMicrovolt }],
      singlePointReachCelsius: 2,
      expanded: 0.3,
      coverageFactor: 2,
      unit: "celsius",
      note,
    },
  );

/** The readings in the order they were taken, from the example's evidence. */
export const s5Readings = s5.scans.channels
  .flatMap(({ channel, seconds, microvolts, polarity }) =>
    seconds.map((at, index) => ({
      seconds: at,
      channel: channel === "S1" ? "1" : channel === "X" ? "2" : "3",
      microvolts: microvolts[index]!,
      polarity: polarity[index] === -1 ? (-1 as const) : (1 as const),
    })),
  )
  .toSorted((a, b) => a.seconds - b.seconds);

export const s5Window = s5.windows[0]!;

export const createS5Run = async (bench: RunBench, uncertaintyDigits: "1" | "2"): Promise<string> => {
  const suffix = uncertaintyDigits;
  await reference(bench, `R1-${suffix}`, -8.75);
  await reference(bench, `R2-${suffix}`, -9.9);
  const voltmeterId = await recordStandard(
    bench,
    `DVM-${suffix}`,
    {
      kind: "voltmeter",
      driftHalfWidthMicrovolt: 0,
      resolutionMicrovolt: 1,
      basis: "EA-4/02 example S5 has no line for it",
    },
    { kind: "voltmeter", corrections: [], expandedMicrovolt: 2, coverageFactor: 2, note },
  );
  const scannerId = await recordStandard(
    bench,
    `SW-${suffix}`,
    { kind: "scanner", parasiticHalfWidthMicrovolt: 2, basis: note },
    { kind: "scanner", parasiticHalfWidthMicrovolt: 2, note },
  );
  // S5 gives the ice point as ±0.1 °C, rectangular: what the equipment's own figures say without a certificate.
  const junctionId = await bareJunction(bench, `ICE-S5-${suffix}`);
  const order = await accepted(
    bench,
    orderInput(bench.northern.customerId, {
      decisionRule: "none",
      guardBandRatio: "",
      decisionRuleAgreedBy: "",
      decisionRuleAgreedOn: "",
      uncertaintyDigits,
      lines: [
        {
          ...lineInput,
          typeLetter: "N",
          construction: "Thermocouple of EA-4/02 example S5",
          protection: "other",
          quantity: "1",
          setpoints: "1000",
          tolerance: "none",
        },
      ],
    }),
  );
  const [tag] = await received(bench, order, "S5-unknown");
  const { number } = await execute(
    createRun,
    bench.technician,
    {
      configurationId: await recordBareTube(bench, `FUR-S5-${suffix}`, 1),
      voltmeterId,
      scannerId,
      procedure: "ea-4-02-s5",
      places: [
        {
          place: "1",
          item: { kind: "reference", tag: `R1-${suffix}` },
          channel: "1",
          junctionId,
          junctionCelsius: 0,
        },
        { place: "2", item: { kind: "sensor", tag: tag! }, channel: "2", junctionId, junctionCelsius: 0 },
        {
          place: "3",
          item: { kind: "reference", tag: `R2-${suffix}` },
          channel: "3",
          junctionId,
          junctionCelsius: 0,
        },
      ],
    },
    benchClock,
  );
  await passGate(bench, number, () => new Date("2026-10-15T05:30:00Z"));
  return number;
};

const bareJunction = async (bench: RunBench, tag: string): Promise<string> => {
  const { id } = await execute(
    recordEquipment,
    bench.manager,
    {
      tag,
      maker: "Invented Works",
      model: "Ice bath",
      serial: tag,
      ...wholeRecord,
      particulars: {
        kind: "junction",
        celsius: 0,
        halfWidthCelsius: 0.1,
        basis: "EA-4/02 example S5: ice point, within ±0.1 °C",
      },
    },
    benchClock,
  );
  await inService(bench.manager, id, benchClock);
  return id;
};
