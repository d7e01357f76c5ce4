import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { execute } from "@/lib/operations/execute";
import { createRun } from "@/lib/operations/run/create";
import { newRunView } from "@/lib/views/run/new-run";
import { refusalOf } from "../../support/front-desk";
import { type CreateInput, fullRunInput } from "../../support/full-run";
import { inService, suspect } from "../../support/in-service";
import { accepted, lineInput, orderInput, received } from "../../support/orders";
import {
  benchClock,
  inLaboratory,
  openRunBench,
  type RunBench,
  recordBareTube,
  recordStandard,
} from "../../support/run-bench";

let bench: RunBench;
let input: CreateInput;
beforeAll(async () => {
  bench = await openRunBench();
  input = await fullRunInput(bench);
});
afterAll(() => bench.close());

const refused = async (more: Partial<CreateInput>, actor = bench.technician) => {
  const refusal = await refusalOf(execute(createRun, actor, { ...input, ...more }, benchClock));
  expect(await inLaboratory((tx) => tx.run.count())).toBe(0);
  return refusal;
};
const place = (index: number, more: Partial<CreateInput["places"][number]>) => ({
  places: input.places.map((row, at) => (at === index ? { ...row, ...more } : row)),
});

describe("a run is refused, each reason at its field", () => {
  it("to anybody but a technician", async () => {
    expect((await refused({}, bench.signatory)).code).toBe("not-permitted");
    expect((await refused({}, bench.northern.actor)).code).toBe("not-permitted");
  });

  it("without a reference, and without a sensor", async () => {
    const only = (kind: string) => input.places.filter(({ item }) => item.kind === kind);
    expect((await refused({ places: only("sensor") })).fields?.places).toMatch(/at least one reference/);
    expect((await refused({ places: only("reference") })).fields?.places).toMatch(/at least one sensor/);
  });

  it("with a channel, a place or a sensor twice", async () => {
    const first = input.places[0]!;
    expect((await refused(place(1, { channel: first.channel }))).fields?.["places.1.channel"]).toMatch(
      /taken by place/,
    );
    expect((await refused(place(1, { place: first.place }))).fields?.["places.1.place"]).toMatch(/twice/);
    expect((await refused(place(1, { item: first.item }))).fields?.["places.1.item"]).toMatch(/twice/);
  });

  it("with one junction at two temperatures", async () => {
    expect((await refused(place(3, { junctionCelsius: 0.5 }))).fields?.["places.3.junctionCelsius"]).toMatch(
      /one temperature in a run/,
    );
  });

  it("with equipment that is of another kind, out of date, or not in service", async () => {
    expect((await refused({ voltmeterId: bench.scannerId })).fields?.voltmeterId).toMatch(
      /Choose a voltmeter/,
    );
    const late = await recordStandard(
      bench,
      "VM-LATE",
      { kind: "voltmeter", driftHalfWidthMicrovolt: 1, resolutionMicrovolt: 0.1, basis: "invented" },
      { kind: "voltmeter", corrections: [], expandedMicrovolt: 2, coverageFactor: 2, note: "" },
      "2026-10-14",
    );
    expect((await refused({ voltmeterId: late })).fields?.voltmeterId).toMatch(/was due on 2026-10-14/);
    await suspect(bench.manager, bench.scannerId, benchClock);
    expect((await refused({})).fields?.scannerId).toMatch(/SC-01 is suspect/);
    await inService(bench.manager, bench.scannerId, benchClock);
  });

  it("in a furnace that is out of service, on the screen, by the operation and by the database", async () => {
    const configurationId = await recordBareTube(bench, "FUR-OUT", 0.5);
    const row = await inLaboratory((tx) =>
      tx.furnaceConfiguration.findUniqueOrThrow({
        where: { id: configurationId },
        include: { furnace: true },
      }),
    );
    await suspect(bench.manager, row.furnace.equipmentId ?? "", benchClock);
    const refusal = await refused({ configurationId });
    expect(refusal.fields?.configurationId).toMatch(/FUR-OUT is suspect/);
    expect(refusal.grounds?.configurationId).toBe("suspect");
    const view = await newRunView(bench.technician, benchClock());
    expect(view.configurations.find(({ id }) => id === configurationId)?.problem).toMatch(
      /FUR-OUT is suspect/,
    );
    const revision = await inLaboratory((tx) =>
      tx.procedureRevision.findFirstOrThrow({ where: { state: "current" } }),
    );
    const insert = inLaboratory((tx) =>
      tx.run.create({
        data: {
          number: "R-OUT",
          configurationId,
          voltmeterId: bench.voltmeterId,
          scannerId: bench.scannerId,
          performerId: personIdOf(bench.technician),
          createdAt: benchClock(),
          procedureRevisionId: revision.id,
          budgetInputs: revision.budgetInputs,
        },
      }),
    );
    await expect(insert).rejects.toThrow(/furnace FUR-OUT is suspect/);
  });

  it("in a configuration whose characterisation has run out", async () => {
    const configurationId = await recordBareTube(bench, "FUR-OLD", 0.5, "2026-10-14");
    expect((await refused({ configurationId })).fields?.configurationId).toMatch(/valid until 2026-10-14/);
  });

  it("above what any sensor of the load was ordered to", async () => {
    const order = await accepted(
      bench,
      orderInput(bench.northern.customerId, {
        lines: [{ ...lineInput, quantity: "1", setpoints: "300 500 600", tolerance: "1" }],
      }),
    );
    const [tag] = await received(bench, order, "LOW-1");
    const row = {
      ...input.places[2]!,
      place: "11",
      channel: "111",
      item: { kind: "sensor" as const, tag: tag! },
    };
    const refusal = await refused({ places: [...input.places, row] });
    expect(refusal.fields?.setpoints).toMatch(
      new RegExp(`${tag}: ordered up to 600 °C; it must not go to 1100 °C`),
    );
  });

  it("with a sensor whose line an external provider does, on the screen, by the operation and by the database", async () => {
    const provider = await inLaboratory((tx) => tx.provider.findFirstOrThrow());
    const order = await accepted(
      bench,
      orderInput(bench.northern.customerId, {
        lines: [{ ...lineInput, quantity: "1", providerId: provider.id }],
      }),
      { externalProviders: "approved" },
    );
    const [tag] = await received(bench, order, "OUT-1");
    const row = { ...input.places[2]!, place: "11", channel: "111" };
    const places = [...input.places, { ...row, item: { kind: "sensor" as const, tag: tag! } }];
    const at = `places.${places.length - 1}.item`;
    const refusal = await refused({ places });
    expect(refusal.fields?.[at]).toMatch(
      new RegExp(`${tag}: its line of order ${order} is subcontracted to ${provider.name}, .* Send it to`),
    );
    expect(refusal.grounds?.[at]).toBe("subcontracted");
    const { waiting } = await newRunView(bench.technician, benchClock());
    expect(waiting.map((sensor) => sensor.tag)).not.toContain(tag);
  });

  it("at a setpoint nobody ordered, or beyond a reference's certificate", async () => {
    expect((await refused({ setpointsCelsius: [300, 850] })).fields?.setpoints).toMatch(
      /850 °C is not ordered/,
    );
    await recordStandard(
      bench,
      "REF-NARROW",
      {
        kind: "reference",
        type: "S",
        protection: "alumina-sheath",
        driftHalfWidthCelsius: 0.3,
        inhomogeneityRelativeHalfWidth: 0.0002,
        basis: "invented",
      },
      {
        kind: "reference",
        points: [
          { celsius: 300, deviationMicrovolt: 0 },
          { celsius: 900, deviationMicrovolt: 0 },
        ],
        expanded: 0.3,
        coverageFactor: 2,
        unit: "celsius",
        note: "",
      },
    );
    const refusal = await refused(place(0, { item: { kind: "reference", tag: "REF-NARROW" } }));
    expect(refusal.fields?.setpoints).toMatch(/REF-NARROW: its certificate holds from 300 to 900 °C/);
  });

  it("with bare platinum beside base metal", async () => {
    await recordStandard(
      bench,
      "REF-BARE",
      {
        kind: "reference",
        type: "S",
        protection: "bare-wire",
        driftHalfWidthCelsius: 0.3,
        inhomogeneityRelativeHalfWidth: 0.0002,
        basis: "invented",
      },
      {
        kind: "reference",
        points: [
          { celsius: 250, deviationMicrovolt: 0 },
          { celsius: 1150, deviationMicrovolt: 0 },
        ],
        expanded: 0.3,
        coverageFactor: 2,
        unit: "celsius",
        note: "",
      },
    );
    const refusal = await refused(place(0, { item: { kind: "reference", tag: "REF-BARE" } }));
    expect(refusal.fields?.["places.0.item"]).toMatch(/REF-BARE: its platinum would stand beside/);
  });

  it("with a sensor that is not there, or in another run already", async () => {
    expect(
      (await refused(place(2, { item: { kind: "sensor", tag: "T-999999" } }))).fields?.["places.2.item"],
    ).toMatch(/no sensor T-999999/);
    await execute(createRun, bench.technician, input, benchClock);
    const again = await refusalOf(execute(createRun, bench.technician, input, benchClock));
    expect(again.fields?.["places.2.item"]).toMatch(/is loaded; only a received sensor/);
    expect(await inLaboratory((tx) => tx.run.count())).toBe(1);
  });
});
