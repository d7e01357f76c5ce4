import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { connect } from "@/lib/commands/postgres/connect";
import { loadEvidence } from "@/lib/data/run/load-evidence";
import type { Evidence } from "@/lib/domain/evidence/schema";
import { neededKinds } from "@/lib/domain/furnace/survey-kinds";
import { execute } from "@/lib/operations/execute";
import { decideCharacterisation } from "@/lib/operations/furnace/decide-characterisation";
import { decideInhomogeneity } from "@/lib/operations/furnace/decide-inhomogeneity";
import { planCharacterisation } from "@/lib/operations/furnace/plan-characterisation";
import { recordInhomogeneity } from "@/lib/operations/furnace/record-inhomogeneity";
import { recordSurvey } from "@/lib/operations/furnace/record-survey";
import { submitCharacterisation } from "@/lib/operations/furnace/submit-characterisation";
import { createRun } from "@/lib/operations/run/create";
import { references } from "@/lib/station/simulation/scenario";
import { simulateSurvey } from "@/lib/station/simulation/simulate-survey";
import { furnaceAt, plan } from "../../domain/furnace/plan";
import { refusalOf } from "../../support/front-desk";
import { type CreateInput, fullRunInput } from "../../support/full-run";
import { benchClock, inLaboratory, openRunBench, type RunBench } from "../../support/run-bench";

let bench: RunBench;
let input: CreateInput;
let number: string;
let before: Evidence;
const hours = (count: number) => () => new Date(benchClock().getTime() + count * 3_600_000);

const characterise = async (temperatures: number[], at: () => Date): Promise<void> => {
  const { technician } = bench;
  const asked = { configurationId: bench.configurationId, plan: { ...plan, temperatures } };
  const { id: characterisationRunId } = await execute(planCharacterisation, technician, asked, at);
  for (const celsius of temperatures)
    for (const kind of neededKinds) {
      const readings = simulateSurvey(kind, furnaceAt(celsius), 4);
      const survey = { characterisationRunId, celsius, measuredOn: "2026-10-10", readings, file: null };
      await execute(recordSurvey, technician, survey, at);
    }
  const submission = { characterisationRunId, validUntil: "2027-10-10" };
  const { id } = await execute(submitCharacterisation, technician, submission, at);
  await execute(decideCharacterisation, bench.signatory, { id, decision: "accepted" }, at);
};

/** Type K and type S at 250 °C (NIST Monograph 175: 10 153 µV and 1 874 µV), with a made spread. */
const rowsAbout = (table: number) =>
  [0, 1, 4, 2, -1].map((more, i) => ({
    millimetre: 100 + 20 * i,
    microvolt: table + more,
    monitorCelsius: 250,
  }));
const rows = rowsAbout(10_153);
const platinum = { rows: rowsAbout(1874) };
const tested = (tag: string, more: Record<string, unknown> = {}, at = benchClock) =>
  execute(
    recordInhomogeneity,
    bench.technician,
    {
      tag,
      performedOn: "2026-10-12",
      readings: {
        method: "scan",
        celsius: 250,
        outsideCelsius: 20,
        meterMicrovolt: 0.2,
        medium: "Salt bath",
        rows,
        ...more,
      },
    },
    at,
  );
const acceptTest = (id: string, at = benchClock) =>
  execute(decideInhomogeneity, bench.signatory, { id, decision: "accepted" }, at);

const evidenceOf = async (): Promise<Evidence> => {
  const found = await inLaboratory((tx) => loadEvidence(tx, number));
  if (!found) throw new Error("no run");
  return found.evidence;
};
const tagOf = (kind: "sensor" | "reference"): string => {
  const row = input.places.find(({ item }) => item.kind === kind);
  return row && row.item.kind !== "shorted" ? row.item.tag : "";
};

beforeAll(async () => {
  bench = await openRunBench();
  input = await fullRunInput(bench);
  await characterise([300, 700, 1100], benchClock);
  await acceptTest((await tested(tagOf("sensor"))).id);
  await acceptTest((await tested(references[0]?.id ?? "", platinum)).id);
  // Recorded and never accepted: it counts for nothing.
  await tested(references[1]?.id ?? "", platinum);
  number = (await execute(createRun, bench.technician, input, hours(1))).number;
  before = await evidenceOf();
});
afterAll(() => bench.close());

describe("a run's budget", () => {
  it("takes axial and positions from the measured characterisation, with their u", () => {
    const { uniformity, axial, radial } = before.configuration.characterisation;
    expect(uniformity).toMatchObject({ kind: "zero" });
    expect(axial).toMatchObject({
      kind: "by-temperature",
      source: expect.stringContaining("CH-2026-0001 of 2026-10-10"),
    });
    expect(radial.kind === "by-temperature" && radial.at[0]?.halfWidthCelsius).toBeGreaterThan(0.15);
    expect(radial.kind === "by-temperature" && radial.at[0]?.standardCelsius).toBeGreaterThan(0);
  });

  it("takes the inhomogeneity of the tested sensor and reference from their tests, of others from the rule", () => {
    const [first, ...others] = before.sensors;
    expect(first?.id).toBe(tagOf("sensor"));
    expect(first?.inhomogeneity).toMatchObject({
      unit: "relative",
      source: expect.stringContaining("inhomogeneity test of 2026-10-12 at 250 °C"),
    });
    expect(JSON.stringify(others.map(({ inhomogeneity }) => inhomogeneity))).not.toContain(
      "inhomogeneity test",
    );
    expect(
      before.references.map(({ inhomogeneity }) => JSON.stringify(inhomogeneity).includes("test of")),
    ).toEqual([true, false]);
  });

  it("stays what it was when a characterisation and a test are accepted later", async () => {
    await characterise([300, 1100], hours(2));
    await acceptTest((await tested(tagOf("sensor"), { meterMicrovolt: 3 }, hours(2))).id, hours(2));
    expect(await evidenceOf()).toEqual(before);
  });
});

describe("what a measured characterisation does not carry", () => {
  it("is a setpoint beyond its temperatures: the run is refused there", async () => {
    await characterise([500, 700], hours(3));
    const refused = await refusalOf(execute(createRun, bench.technician, input, hours(4)));
    expect(refused.fields?.setpoints).toContain(
      "characterised from 500 to 700 °C; 300, 900, 1100 °C lies beyond",
    );
  });
});

describe("an inhomogeneity test", () => {
  it("is accepted once, by a person who did not record it", async () => {
    const { id } = await tested(tagOf("sensor"));
    const own = { ...bench.technician, roles: ["technician", "quality-manager"] } as typeof bench.technician;
    const decide = (actor: typeof own) =>
      execute(decideInhomogeneity, actor, { id, decision: "returned", reason: "Again, slower." }, benchClock);
    expect(await refusalOf(decide(bench.technician))).toMatchObject({ code: "not-permitted" });
    expect(await refusalOf(decide(own))).toMatchObject({ code: "rule" });
    const admin = await connect(bench.database.adminUrl);
    const sql =
      "INSERT INTO inhomogeneity_decision (test_id, decision, decided_by_id, decided_at) VALUES ($1, 'accepted', $2, now())";
    const personId = own.kind === "staff" ? own.personId : "";
    await expect(admin.query(sql, [id, personId])).rejects.toThrow("cannot decide on it");
    await expect(admin.query("UPDATE inhomogeneity_test SET celsius = 1")).rejects.toThrow("append-only");
    await admin.end();
    await decide(bench.signatory);
    expect(await refusalOf(decide(bench.signatory))).toMatchObject({ code: "wrong-state" });
  });

  it("is of a thermocouple that is here, and not of tomorrow", async () => {
    expect(await refusalOf(tested("T-NONE"))).toMatchObject({ fields: { tag: expect.any(String) } });
    expect(await refusalOf(tested("VM-01"))).toMatchObject({ fields: { tag: expect.any(String) } });
    const ahead = { tag: tagOf("sensor"), performedOn: "2026-12-01" };
    const readings = {
      method: "scan" as const,
      celsius: 250,
      outsideCelsius: 20,
      meterMicrovolt: 0,
      medium: "Bath",
      rows,
    };
    const late = execute(recordInhomogeneity, bench.technician, { ...ahead, readings }, benchClock);
    expect(await refusalOf(late)).toMatchObject({ fields: { performedOn: expect.any(String) } });
    expect(await refusalOf(tested(tagOf("sensor"), { rows: rows.slice(0, 2) }))).toMatchObject({
      fields: { "readings.rows": expect.any(String) },
    });
  });
});
