import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import type { Actor } from "@/lib/domain/staff/actor";
import { simulateSurvey } from "@/lib/station/simulation/simulate-survey";
import { furnaceAt } from "../../domain/furnace/plan";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";
import { measuring } from "./measure";

let bench: RunBench;
beforeAll(async () => {
  bench = await openRunBench();
});
afterAll(() => bench.close());

const { surveyed, submitted, measuredWhole } = measuring(() => bench);

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
        `INSERT INTO run (number, configuration_id, voltmeter_id, scanner_id, performer_id, created_at, procedure_revision_id, budget_inputs)
         SELECT gen_random_uuid()::text, $1, $2, $3, $4, $5, id, budget_inputs FROM procedure_revision
          WHERE state = 'current' LIMIT 1`,
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
