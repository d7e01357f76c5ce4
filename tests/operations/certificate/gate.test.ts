import { createHash } from "node:crypto";
import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { canonical } from "@/lib/domain/audit/canonical";
import { CertificateContent } from "@/lib/domain/certificate/content";
import type { StoredRow } from "@/lib/domain/gate/stored-outcome";
import { reviewResultView } from "@/lib/views/review-result";
import { reviewRunView } from "@/lib/views/review-run";
import { buildRun } from "../../support/build-run";
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
  await database?.drop();
});

const row = (more: Partial<StoredRow>): StoredRow => ({
  heading: "metal",
  code: "used-base-metal",
  severity: "overridable",
  subjects: [],
  reason: "used base metal.",
  remedy: "",
  source: "an invented source",
  given: "agreed for this test.",
  reachesCertificate: true,
  ...more,
});

it("a reason given at the gate is shown to the signatory, and stands on the certificate of its own sensor alone", async () => {
  const built = await buildRun(world, { owners: ["north", "south"] });
  const [north, south] = built.sensors;
  const rows = [
    row({ subjects: [north!.tag] }),
    row({
      code: "voltage-point",
      reason: "No voltage check point is recorded today.",
      given: "the source is away.",
    }),
    row({ code: "bore-clearance", reason: "wide.", subjects: [north!.tag], reachesCertificate: false }),
  ];
  await inScope({ kind: "laboratory" }, (tx) =>
    tx.gateOutcome.create({
      data: {
        runId: built.run.id,
        verdict: "may-start",
        rows: canonical(rows),
        policy: "{}",
        planDigest: Uint8Array.from(createHash("sha256").update("plan").digest()),
        assessedById: world.people.technician.personId,
        assessedAt: new Date("2026-03-02T07:00:00Z"),
      },
    }),
  );
  const review = await reviewRunView(world.people.signatory, built.run.number);
  expect(review.exceptions.filter(({ kind }) => kind === "gate").map(({ text }) => text)).toEqual([
    expect.stringContaining("used base metal. Given: agreed for this test."),
    expect.stringContaining("No voltage check point"),
    expect.stringContaining("wide."),
  ]);
  const page = await reviewResultView(world.people.signatory, built.run.number, north!.tag, 1);
  expect(page.deviations).toContain("Used base metal. Accepted: agreed for this test.");

  await signRun(world.people.signatory, built);
  const stored = await inScope({ kind: "laboratory" }, (tx) =>
    tx.certificate.findMany({ where: { runId: built.run.id }, select: { sensorId: true, content: true } }),
  );
  const said = (sensorId: string) =>
    CertificateContent.parse(JSON.parse(stored.find((one) => one.sensorId === sensorId)!.content)).deviations;
  const ofRun = "No voltage check point is recorded today. Accepted: the source is away.";
  expect(said(north!.id)).toEqual(["Used base metal. Accepted: agreed for this test.", ofRun]);
  expect(said(south!.id)).toEqual([ofRun]);
});
