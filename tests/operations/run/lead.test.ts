import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadEvidence } from "@/lib/data/run/load-evidence";
import { recordEquipment } from "@/lib/operations/equipment/record";
import { execute } from "@/lib/operations/execute";
import { createRun } from "@/lib/operations/run/create";
import { refusalOf } from "../../support/front-desk";
import { type CreateInput, fullRunInput } from "../../support/full-run";
import { inService, suspect, wholeRecord } from "../../support/in-service";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
let input: CreateInput;
beforeAll(async () => {
  bench = await openRunBench();
  input = await fullRunInput(bench);
});
afterAll(() => bench.close());

const lead = async (tag: string, type: "K" | "N") => {
  const { id } = await execute(
    recordEquipment,
    bench.manager,
    {
      tag,
      maker: "Invented Cable",
      model: "",
      serial: tag,
      ...wholeRecord,
      particulars: {
        kind: "lead",
        form: "compensating",
        type,
        class: "2",
        lot: "L-77",
        correctionMicrovolt: -2.5,
        halfWidthMicrovolt: 4,
        fromCelsius: 15,
        toCelsius: 40,
        basis: "tested at its ends, invented",
      },
    },
    benchClock,
  );
  return id;
};
const isSensor = (place: CreateInput["places"][number]) => place.item.kind === "sensor";
/** The load with a lead at one of its places. */
const joined = (at: number, leadId: string): CreateInput => ({
  ...input,
  places: input.places.map((place, index) => (index === at ? { ...place, leadId } : place)),
});
const refused = async (at: number, leadId: string) =>
  (await refusalOf(execute(createRun, bench.technician, joined(at, leadId), benchClock))).fields?.[
    `places.${at}.leadId`
  ];

describe("a lead of the laboratory's", () => {
  it("serves sensors of its type only, once it is in service", async () => {
    const sensorAt = input.places.findIndex(isSensor);
    const referenceAt = input.places.findIndex(({ item }) => item.kind === "reference");
    const types = await inLaboratory((tx) => tx.sensor.findMany({ select: { tag: true, typeLetter: true } }));
    const { item } = input.places[sensorAt]!;
    const type = types.find(({ tag }) => item.kind === "sensor" && tag === item.tag)?.typeLetter;
    const own = await lead("LEAD-1", type === "N" ? "N" : "K");
    const other = await lead("LEAD-2", type === "N" ? "K" : "N");
    expect(await refused(sensorAt, own)).toMatch(/LEAD-1 is received/);
    for (const id of [own, other]) await inService(bench.manager, id, benchClock);
    expect(await refused(sensorAt, other)).toMatch(/is for type/);
    expect(await refused(referenceAt, own)).toMatch(/Only a sensor/);
    expect(await refused(sensorAt, bench.scannerId)).toMatch(/Choose a lead that is recorded/);
    await suspect(bench.manager, own, benchClock);
    expect(await refused(sensorAt, own)).toMatch(/LEAD-1 is suspect/);
    await inService(bench.manager, own, benchClock);
    const { number } = await execute(createRun, bench.technician, joined(sensorAt, own), benchClock);
    const loaded = await inLaboratory((tx) => loadEvidence(tx, number));
    const [first, second] = loaded?.evidence.sensors ?? [];
    expect(first).toMatchObject({
      cable: { lot: "LEAD-1, lot L-77", correctionMicrovolt: -2.5 },
      lead: { kind: "rectangular", halfWidth: 4, unit: "microvolt" },
    });
    expect(second?.cable).toBeUndefined();
  });
});
