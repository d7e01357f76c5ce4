import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { loadConfigurationOn } from "@/lib/data/run/load-configuration";
import { surveyKinds } from "@/lib/domain/furnace/survey-kinds";
import type { SurveyReadings } from "@/lib/domain/furnace/survey-readings";
import type { Actor } from "@/lib/domain/staff/actor";
import { execute } from "@/lib/operations/execute";
import { decideCharacterisation } from "@/lib/operations/furnace/decide-characterisation";
import { planCharacterisation } from "@/lib/operations/furnace/plan-characterisation";
import { recordCharacterisation } from "@/lib/operations/furnace/record-characterisation";
import { recordSurvey } from "@/lib/operations/furnace/record-survey";
import { submitCharacterisation } from "@/lib/operations/furnace/submit-characterisation";
import { simulateSurvey } from "@/lib/station/simulation/simulate-survey";
import { furnaceAt, plan } from "../../domain/furnace/plan";
import { refusalOf } from "../../support/front-desk";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
beforeAll(async () => {
  bench = await openRunBench();
});
afterAll(() => bench.close());

const measuredOn = "2026-10-10";
const later = (days: number) => () => new Date(benchClock().getTime() + days * 86_400_000);

const planned = (change: Partial<typeof plan> = {}, actor: Actor = bench.technician) =>
  execute(
    planCharacterisation,
    actor,
    { configurationId: bench.configurationId, plan: { ...plan, ...change } },
    benchClock,
  );

const surveyed = (
  characterisationRunId: string,
  celsius: number,
  readings: SurveyReadings,
  actor: Actor = bench.technician,
) =>
  execute(
    recordSurvey,
    actor,
    { characterisationRunId, celsius, measuredOn, readings, file: null },
    benchClock,
  );

const submitted = (
  characterisationRunId: string,
  validUntil = "2027-10-10",
  actor: Actor = bench.technician,
) => execute(submitCharacterisation, actor, { characterisationRunId, validUntil }, benchClock);

const measuredWhole = async () => {
  const { id } = await planned();
  for (const celsius of plan.temperatures)
    for (const [seed, kind] of surveyKinds.entries())
      await surveyed(id, celsius, simulateSurvey(kind, furnaceAt(celsius), seed + 1));
  return id;
};

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

describe("the database, where it is the last defence", () => {
  const inDatabase = async (sql: string, values: readonly unknown[]) => {
    const admin = await connect(bench.database.adminUrl);
    try {
      await admin.query(sql, [...values]);
      return "stored";
    } catch (error) {
      return (error as Error).message;
    } finally {
      await admin.end();
    }
  };
  const personOf = (actor: Actor) => (actor.kind === "system" ? "" : actor.personId);
  const accept =
    "INSERT INTO characterisation_decision (characterisation_id, decision, decided_by_id, decided_at) VALUES ($1, 'accepted', $2, now())";

  it("refuses acceptance by who submitted, by who measured, and by nobody", async () => {
    const runId = await measuredWhole();
    await surveyed(runId, 400, simulateSurvey("stability", furnaceAt(400), 5), bench.manager);
    const { id } = await submitted(runId);
    expect(await inDatabase(accept, [id, personOf(bench.technician)])).toContain("cannot decide on it");
    expect(await inDatabase(accept, [id, personOf(bench.manager)])).toContain("who measured it");
    expect(await inDatabase(accept, [id, null])).toContain("names who took it");
    expect(await inDatabase(accept, [id, personOf(bench.signatory)])).toBe("stored");
  });

  it("refuses to change a survey, and to add one behind a submission", async () => {
    const runId = await measuredWhole();
    expect(
      await inDatabase(
        "UPDATE characterisation_survey SET readings = '{}' WHERE characterisation_run_id = $1",
        [runId],
      ),
    ).toMatch(/append-only|never changed|may not/);
    await submitted(runId);
    const late = `INSERT INTO characterisation_survey
      (characterisation_run_id, kind, celsius, measured_on, readings, evaluation, engine_version, recorded_at)
      VALUES ($1, 'axial', 400, '2026-10-10', '{}', '{}', '1', now())`;
    expect(await inDatabase(late, [runId])).toContain("submitted already");
  });

  it("refuses a run in a configuration without an accepted characterisation, or after its last day", async () => {
    const run = (configurationId: string, at: string) =>
      inDatabase(
        `INSERT INTO run (number, configuration_id, voltmeter_id, scanner_id, performer_id, created_at, budget_inputs)
         VALUES (gen_random_uuid()::text, $1, $2, $3, $4, $5, '{}')`,
        [configurationId, bench.voltmeterId, bench.scannerId, personOf(bench.technician), at],
      );
    const bare = await inLaboratory(async (tx) => {
      const { furnaceId } = await tx.furnaceConfiguration.findUniqueOrThrow({
        where: { id: bench.configurationId },
      });
      const { id } = await tx.furnaceConfiguration.create({
        data: { furnaceId, name: "New block", kind: "equalising-block", places: 6, immersionMillimetre: 300 },
      });
      await tx.characterisation.create({
        data: {
          configurationId: id,
          performedOn: new Date("2026-10-01"),
          validUntil: new Date("2027-10-01"),
          uniformityHalfWidthCelsius: 1,
          statement: "waits for its acceptance",
          recordedAt: benchClock(),
          recordedById: personOf(bench.technician),
        },
      });
      return id;
    });
    expect(await run(bare, "2026-11-01T08:00:00Z")).toContain("no accepted characterisation in date");
    expect(await run(bench.configurationId, "2031-01-01T08:00:00Z")).toContain(
      "no accepted characterisation in date",
    );
    expect(await run(bench.configurationId, "2026-10-15T09:00:00Z")).toBe("stored");
  });
});
