import { createHash } from "node:crypto";
import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { canonical } from "@/lib/domain/audit/canonical";
import type { EvaluatedPoint } from "@/lib/domain/evidence/evaluation";
import { askAmendment } from "@/lib/operations/certificate/ask-amendment";
import { execute } from "@/lib/operations/execute";
import { certificatePageView } from "@/lib/views/certificate-page";
import { reviewRunView } from "@/lib/views/review-run";
import { buildRun } from "../support/build-run";
import { buildWorld, type World } from "../support/build-world";
import { type TestDatabase, testDatabase } from "../support/database";
import { issueAllNow } from "../support/issue-now";
import { signClock, signRun } from "../support/sign-run";

/** One sensor: at 600 °C the references differ, at 1000 °C no tolerance is defined; the gate warned of two things. */

let database: TestDatabase;
let world: World;
let built: Awaited<ReturnType<typeof buildRun>>;
const laboratory = { kind: "laboratory" } as const;
const digest = Uint8Array.from(createHash("sha256").update("plan").digest());

const change = (point: EvaluatedPoint): EvaluatedPoint => {
  if (point.state !== "measured") return point;
  const [first, second] = point.references;
  return point.nominalCelsius === 600
    ? { ...point, references: [first!, { ...second!, celsius: first!.celsius + 0.7 }] }
    : {
        ...point,
        conformity: {
          ...{ state: "no-tolerance-defined", tolerance: null, acceptanceCelsius: null, probability: null },
          printed: { tolerance: null, probability: null },
        },
      };
};

const gateRow = (severity: "ok" | "warning", code: string) => ({
  ...{ heading: "range", code, severity, subjects: [], reason: "Invented.", remedy: "", source: "" },
  ...{ given: null, reachesCertificate: false },
});

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  built = await buildRun(world, { owners: ["north"], change });
  const by = { personId: world.people.technician.personId, at: new Date("2026-03-02T07:00:00Z") };
  await inScope(laboratory, async (tx) => {
    const runId = built.run.id;
    const rows = [gateRow("ok", "one"), gateRow("warning", "two"), gateRow("warning", "three")];
    await tx.gateOutcome.create({
      data: {
        ...{ runId, verdict: "may-start", rows: canonical(rows), policy: "{}", planDigest: digest },
        ...{ assessedById: by.personId, assessedAt: by.at },
      },
    });
    const { id: setpointId } = await tx.runSetpoint.findFirstOrThrow({ where: { runId, celsius: 600 } });
    const criterion = { minimumSeconds: 600, slopeTimesLengthCelsius: 0.3, agreementCelsius: 0.95 };
    await tx.stabilityWindow.create({
      data: {
        ...{ runId, setpointId, fromSeconds: 3600, toSeconds: 4200, origin: "proposed" },
        ...{ assessment: canonical({ differenceCelsius: 0.7, criterion }), blocksDigest: digest },
        ...{ acceptedById: by.personId, acceptedAt: by.at },
      },
    });
  });
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

it("tells the signatory what a spread is held against, what is only to note, and what the gate warned of", async () => {
  const review = await reviewRunView(world.people.signatory, built.run.number);
  expect(review.exceptions).toMatchObject([
    {
      kind: "references-differ",
      isNote: false,
      text: "the references differ by 0.70 °C; at most 0.950 °C is allowed (U of the difference)",
    },
    { kind: "conformity", isNote: true, text: "no tolerance is defined at this temperature" },
  ]);
  expect(review.gate).toEqual({ warnings: 2, setAside: 0 });
  expect(review.settledExceptions).toBe(0);
});

it("counts after signing what had to be opened, and no note; and hears an interval in a remark asked for", async () => {
  const [certificate] = await signRun(world.people.signatory, built);
  const review = await reviewRunView(world.people.signatory, built.run.number);
  expect(review.exceptions).toEqual([]);
  expect(review.settledExceptions).toBe(1);

  await issueAllNow();
  const number = certificate!.number;
  const { id: certificateId } = await inScope(laboratory, (tx) =>
    tx.certificate.findUniqueOrThrow({ where: { number } }),
  );
  const remark = "The customer should recalibrate this sensor every 12 months.";
  const asked = { certificateId, kind: "amendment" as const, reason: "asked for (invented)" };
  await execute(askAmendment, world.people.quality, { ...asked, corrections: { remark } }, signClock);
  const page = await certificatePageView(world.people.signatory, number);
  expect(page.asked).toMatchObject({ speaksOfInterval: true });
});
