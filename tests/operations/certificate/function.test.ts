import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { CertificateContent } from "@/lib/domain/certificate/content";
import type { EvaluatedPoint } from "@/lib/domain/evidence/evaluation";
import { sensorFunctionView } from "@/lib/views/sensor-function";
import { buildRun, type RunOptions } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { signRun } from "../../support/sign-run";

let database: TestDatabase;
let world: World;

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const choice = {
  degreeRule: { kind: "fixed", degree: 1 },
  isThroughZero: true,
  method: "own-plus-common",
  allowBelow: null,
} as const;

/** The invented points state nothing of their own; a fit needs some scatter at each. */
const withRepeatability = (point: EvaluatedPoint): EvaluatedPoint => {
  if (point.state !== "measured") return point;
  const [line] = point.emfBudget.contributions;
  if (!line) throw new Error("the invented points have a budget");
  const own = { ...line, key: "sensor.repeatability", effect: 3, variance: 9, standardUncertainty: 3 };
  return { ...point, emfBudget: { ...point.emfBudget, contributions: [line, own] } };
};

const signedContent = async (options: Partial<RunOptions>) => {
  const setpoints = [400, 600, 800, 1000].map((celsius) => ({ typed: String(celsius), celsius }));
  const built = await buildRun(world, {
    owners: ["north"],
    setpoints,
    change: withRepeatability,
    ...options,
  });
  await signRun(world.people.signatory, built);
  const row = await inScope({ kind: "laboratory" }, (tx) =>
    tx.certificate.findFirstOrThrow({ where: { runId: built.run.id } }),
  );
  return CertificateContent.parse(JSON.parse(row.content));
};

describe("a signed certificate", () => {
  it("carries the deviation function that the run's evidence asks for, its table every 50 °C", async () => {
    const content = await signedContent({ deviationFunction: choice });
    expect(content.function).toMatchObject({ degree: 1, fromCelsius: "400", toCelsius: "1000", unit: "°C" });
    expect(content.function?.rows).toHaveLength(13);
    expect(content.function?.statements.join(" ")).toContain("taken unreduced");
  });

  it("has its table in °F where the customer ordered in °F and the procedure names no unit", async () => {
    const setpoints = [400, 600, 800, 1000].map((celsius) => ({
      typed: String((celsius * 9) / 5 + 32),
      celsius,
    }));
    const content = await signedContent({ deviationFunction: choice, temperatureUnit: "F", setpoints });
    expect(content.function).toMatchObject({ unit: "°F" });
    expect(content.function?.rows[0]?.temperature).toBe("800");
  });

  it("carries the same as the review's page shows", async () => {
    const { function: carried, run, item } = await signedContent({ deviationFunction: choice });
    const table = { unit: null, step: 50 } as const;
    const { result, rule } = await sensorFunctionView(world.people.signatory, run.number, item.tag, table);
    if (result.kind !== "fitted") throw new Error(result.reason);
    expect(rule).toEqual(choice);
    expect(result.coefficients.texts).toEqual(carried?.coefficients.map(({ value }) => value));
    expect(result.table.rows.map(({ printedExpanded }) => printedExpanded)).toEqual(
      carried?.rows.map(({ expanded }) => expanded),
    );
  });

  it("carries none where the evidence asks for none", async () => {
    const content = await signedContent({});
    expect("function" in content).toBe(false);
  });

  it("says why there is none where too few setpoints were measured", async () => {
    const setpoints = [400, 800].map((celsius) => ({ typed: String(celsius), celsius }));
    const content = await signedContent({ deviationFunction: choice, setpoints });
    expect("function" in content).toBe(false);
    expect(content.deviations.join()).toMatch(/No deviation function.*distinct temperatures/);
  });
});
