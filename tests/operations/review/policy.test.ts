import { afterAll, beforeAll, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { performerSignedOff } from "@/lib/domain/certificate/texts";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { execute } from "@/lib/operations/execute";
import { secondLook } from "@/lib/operations/review/second-look";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { signClock, signOffInput } from "../../support/sign-run";

let database: TestDatabase;
let world: World;

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld({ performerMaySignOff: true });
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const signAs = async (who: "technician" | "signatory", exceptionReason?: string) => {
  const built = await buildRun(world, { owners: ["north"] });
  return execute(signOff, world.people[who], { ...(await signOffInput(built)), exceptionReason }, signClock);
};
const look = (who: "technician" | "quality" | "signatory", certificateId: string) =>
  execute(
    secondLook,
    world.people[who],
    { certificateId, finding: "Readings, windows and budget looked at; nothing to add." },
    signClock,
  );

it("lets the performer sign by policy only with a reason, says so, and asks somebody else for a second look", async () => {
  await expect(signAs("technician")).rejects.toMatchObject({
    refusal: { code: "invalid", fields: { exceptionReason: expect.any(String) } },
  });
  const { certificates } = await signAs("technician", "The other signatory is away until Monday.");
  const { id, sensorId } = certificates[0]!;
  await inScope({ kind: "laboratory" }, async (tx) => {
    const row = await tx.certificate.findUniqueOrThrow({ where: { id } });
    expect(JSON.parse(row.content).evidence.exception).toBe(performerSignedOff);
    const decision = await tx.reviewDecision.findFirstOrThrow({
      where: { sensorId, decision: "signed-off" },
    });
    expect(decision.exceptionReason).toBe("The other signatory is away until Monday.");
    const event = await tx.auditEvent.findFirstOrThrow({ where: { entityId: id } });
    expect(JSON.parse(event.payload).exception).toBe(true);
  });
  await expect(look("technician", id)).rejects.toMatchObject({ refusal: { code: "rule" } });
  expect(await look("quality", id)).toEqual({ number: certificates[0]!.number });
  await expect(look("signatory", id)).rejects.toMatchObject({ refusal: { code: "wrong-state" } });
});

it("owes no second look where somebody else signed, and drops a reason nobody needs", async () => {
  const { certificates } = await signAs("signatory", "not needed here at all");
  const decision = await inScope({ kind: "laboratory" }, (tx) =>
    tx.reviewDecision.findFirstOrThrow({ where: { sensorId: certificates[0]!.sensorId } }),
  );
  expect(decision.exceptionReason).toBeNull();
  await expect(look("quality", certificates[0]!.id)).rejects.toMatchObject({
    refusal: { code: "wrong-state" },
  });
});
