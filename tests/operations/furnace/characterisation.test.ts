import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadConfigurationOn } from "@/lib/data/run/load-configuration";
import type { surveyKinds } from "@/lib/domain/furnace/survey-kinds";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { decideCharacterisation } from "@/lib/operations/furnace/decide-characterisation";
import { planCharacterisation } from "@/lib/operations/furnace/plan-characterisation";
import { recordCharacterisation } from "@/lib/operations/furnace/record-characterisation";
import { recordSurvey } from "@/lib/operations/furnace/record-survey";
import { simulateSurvey } from "@/lib/station/simulation/simulate-survey";
import { furnaceAt, plan } from "../../domain/furnace/plan";
import { refusalOf } from "../../support/front-desk";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";
import { measuredOn, measuring } from "./measure";

let bench: RunBench;
beforeAll(async () => {
  bench = await openRunBench();
});
afterAll(() => bench.close());

const later = (days: number) => () => new Date(benchClock().getTime() + days * 86_400_000);
const { planned, surveyed, submitted, measuredWhole } = measuring(() => bench);

const decide = (
  id: string,
  actor: Actor,
  decision: "accepted" | "returned" = "accepted",
  reason = "",
  days = 0,
) => execute(decideCharacterisation, actor, { id, decision, reason }, later(days));

const usedOn = (days: number) =>
  inLaboratory((tx) => {
    const moment = later(days)();
    return loadConfigurationOn(tx, bench.configurationId, moment.toISOString().slice(0, 10), moment);
  });

describe("a characterisation, from plan to the runs that rest on it", () => {
  it("counts only once another person has accepted it, and from then on", async () => {
    const runId = await measuredWhole();
    const { id } = await submitted(runId);
    expect((await usedOn(0))?.characterisation?.figures).toBe(null);
    expect(await refusalOf(decide(id, bench.technician))).toMatchObject({ code: "not-permitted" });
    const both = { ...bench.technician, roles: ["technician", "signatory"] } as Actor;
    expect(await refusalOf(decide(id, both))).toMatchObject({
      code: "rule",
      message: expect.stringContaining("Another person"),
    });
    await decide(id, bench.signatory, "accepted", "", 1);
    // A run made before the acceptance keeps what it had.
    expect((await usedOn(0))?.characterisation?.figures).toBe(null);
    const now = (await usedOn(1))?.characterisation;
    expect(now).toMatchObject({ id, performedOn: measuredOn, validUntil: "2027-10-10" });
    expect(now?.figures?.temperatures.map(({ celsius }) => celsius)).toEqual(plan.temperatures);
    expect(now?.statement).toContain("over 60 mm");
    expect(await refusalOf(decide(id, bench.signatory, "accepted", "", 2))).toMatchObject({
      code: "wrong-state",
    });
    expect(await refusalOf(surveyed(runId, 400, simulateSurvey("axial", furnaceAt(400), 1)))).toMatchObject({
      code: "wrong-state",
      message: expect.stringContaining("is accepted"),
    });
  });

  it("is returned with a reason, measured again, and submitted anew", async () => {
    const runId = await measuredWhole();
    const first = await submitted(runId);
    expect(await refusalOf(decide(first.id, bench.signatory, "returned"))).toMatchObject({
      code: "invalid",
      fields: { reason: expect.any(String) },
    });
    await decide(first.id, bench.signatory, "returned", "Survey 400 °C again after the door was closed.");
    await surveyed(runId, 400, simulateSurvey("axial", { ...furnaceAt(400), fallCelsius: 0.2 }, 9));
    const second = await submitted(runId);
    expect(second.id).not.toBe(first.id);
    const rows = await inLaboratory((tx) =>
      tx.characterisation.findMany({
        where: { characterisationRunId: runId },
        orderBy: { recordedAt: "asc" },
      }),
    );
    expect(rows).toHaveLength(2);
    expect(rows.map(({ source }) => source)).toEqual(["measured", "measured"]);
  });

  it("is not submitted before everything planned is measured, nor twice, nor to hold for no day", async () => {
    const { id } = await planned({ temperatures: [1000] });
    const readings = (kind: (typeof surveyKinds)[number]) => simulateSurvey(kind, furnaceAt(1000), 3);
    expect(await refusalOf(submitted(id))).toMatchObject({
      message: expect.stringContaining("Axial uniformity at 1000 °C"),
    });
    for (const kind of ["axial", "positions", "stability"] as const) await surveyed(id, 1000, readings(kind));
    expect(await refusalOf(submitted(id, measuredOn))).toMatchObject({
      fields: { validUntil: expect.stringContaining(measuredOn) },
    });
    await submitted(id);
    expect(await refusalOf(submitted(id))).toMatchObject({ code: "wrong-state" });
  });

  it("refuses a wrong survey at its field, and stores nothing of it", async () => {
    const { id } = await planned();
    const readings = simulateSurvey("axial", furnaceAt(400), 1);
    if (readings.kind !== "axial") throw new Error("another kind");
    const rows = readings.rows.map((row, i) => (i === 5 ? { ...row, monitor: row.monitor * 10 } : row));
    expect(await refusalOf(surveyed(id, 400, { ...readings, rows }))).toMatchObject({
      code: "invalid",
      fields: { "readings.rows.5.monitor": expect.any(String) },
    });
    expect(await refusalOf(surveyed(id, 401, readings))).toMatchObject({
      fields: { celsius: expect.any(String) },
    });
    const tomorrow = {
      characterisationRunId: id,
      celsius: 400,
      measuredOn: "2026-10-16",
      readings,
      file: null,
    };
    expect(await refusalOf(execute(recordSurvey, bench.technician, tomorrow, benchClock))).toMatchObject({
      fields: { measuredOn: expect.any(String) },
    });
    expect(await refusalOf(surveyed(id, 400, readings, bench.frontDesk))).toMatchObject({
      code: "not-permitted",
    });
    const nothing = { ...tomorrow, measuredOn, readings: null };
    expect(await refusalOf(execute(recordSurvey, bench.technician, nothing, benchClock))).toMatchObject({
      fields: { "readings.rows": expect.any(String) },
    });
    expect(
      await inLaboratory((tx) => tx.characterisationSurvey.count({ where: { characterisationRunId: id } })),
    ).toBe(0);
  });

  it("takes a survey from its file, kept by its hash, and names line and column of a wrong one", async () => {
    const { id } = await planned();
    const survey = simulateSurvey("axial", furnaceAt(400), 1);
    if (survey.kind !== "axial") throw new Error("another kind");
    const lines = survey.rows.map(({ millimetre, probe, monitor }) => `${millimetre};${probe};${monitor}`);
    const upload = (text: string, change = {}) =>
      execute(
        recordSurvey,
        bench.technician,
        {
          characterisationRunId: id,
          celsius: 400,
          measuredOn,
          readings: null,
          file: {
            kind: "axial",
            fileName: "axial-400.csv",
            bytes: new TextEncoder().encode(text),
            junctionCelsius: 0,
            ...change,
          },
        },
        benchClock,
      );
    const header = "position_mm;probe_uV;monitor_uV";
    const whole = [header, ...lines].join("\n");
    await upload(whole);
    await upload(whole);
    const rows = await inLaboratory((tx) =>
      tx.characterisationSurvey.findMany({ where: { characterisationRunId: id } }),
    );
    expect(rows).toHaveLength(2);
    expect(new Set(rows.map(({ documentId }) => documentId)).size).toBe(1);
    expect(await refusalOf(upload([header, lines[0], "380;x;1"].join("\n")))).toMatchObject({
      fields: { file: "Line 3, column probe_uv: “x” is not a number." },
    });
    expect(await refusalOf(upload([header, "380;1;-1000000"].join("\n")))).toMatchObject({
      fields: { file: expect.stringContaining("Row 1 of the readings, monitor") },
    });
    expect(
      await refusalOf(upload("arrangement,place,sensor,reading_uV\n1,a,b,3\n", { kind: "positions" })),
    ).toMatchObject({
      fields: { "readings.centre": expect.any(String) },
    });
  });

  it("is planned within its furnace", async () => {
    expect(await refusalOf(planned({ temperatures: [100] }))).toMatchObject({
      fields: { "plan.temperatures": expect.stringContaining("200 to 1200") },
    });
    const nowhere = { configurationId: "00000000-0000-4000-8000-000000000000", plan };
    expect(
      await refusalOf(execute(planCharacterisation, bench.technician, nowhere, benchClock)),
    ).toMatchObject({
      code: "not-found",
    });
  });
});

describe("a typed characterisation", () => {
  it("is accepted by another person too, before it counts", async () => {
    const { id } = await execute(
      recordCharacterisation,
      bench.manager,
      {
        configurationId: bench.configurationId,
        performedOn: "2026-10-14",
        validUntil: "2027-10-14",
        uniformityHalfWidthCelsius: 0.4,
        statement: "Half range over 40 mm (invented)",
      },
      benchClock,
    );
    expect((await usedOn(0))?.characterisation?.uniformityHalfWidthCelsius).not.toBe(0.4);
    expect(await refusalOf(decide(id, bench.manager))).toMatchObject({ code: "rule" });
    await decide(id, bench.signatory);
    expect((await usedOn(0))?.characterisation?.uniformityHalfWidthCelsius).toBe(0.4);
  });
});
