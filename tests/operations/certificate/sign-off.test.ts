import pg from "pg";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { hex } from "@/lib/data/hex";
import { inScope } from "@/lib/data/in-scope";
import { sha256 } from "@/lib/data/sha256";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { reviewedForm } from "@/lib/domain/certificate/reviewed-form";
import type { Actor } from "@/lib/domain/staff/actor";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { execute } from "@/lib/operations/execute";
import { returnRun } from "@/lib/operations/review/return";
import { addEvaluation, buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { type TestDatabase, testDatabase } from "../../support/database";
import { openForSigners, signClock, signingAct, signOffInput } from "../../support/sign-run";

let database: TestDatabase;
let world: World;
const laboratory = { kind: "laboratory" } as const;

beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const sign = (actor: Actor, input: Awaited<ReturnType<typeof signOffInput>> & { exceptionReason?: string }) =>
  execute(signOff, actor, input, signClock);
const stored = (sensorId: string) =>
  inScope(laboratory, (tx) => tx.certificate.findFirst({ where: { sensorId } }));

describe("sign-off", () => {
  it("fixes content, hash, number and token together, closes the run and completes the order", async () => {
    const built = await buildRun(world, { owners: ["north", "south"] });
    const input = await signOffInput(built);
    const { certificates } = await sign(world.people.signatory, input);
    expect(certificates).toHaveLength(2);
    const [first] = await inScope(laboratory, (tx) =>
      tx.auditEvent.findMany({ where: { action: "certificate.signed-off" }, orderBy: { sequence: "asc" } }),
    );
    for (const [index, { sensorId, number, token }] of certificates.entries()) {
      const row = await stored(sensorId);
      const content = CertificateContent.parse(JSON.parse(row!.content));
      expect(content.number).toBe(number);
      expect(number).toMatch(/^C-2026-\d{4}$/);
      expect(token).toMatch(/^[A-Za-z0-9_-]{43}$/);
      expect(hex(row!.contentHash)).toBe(hex(contentHash(content, sha256)));
      expect(hex(row!.contentHash)).toBe(hex(sha256(Buffer.from(row!.content, "utf8"))));
      expect(hex(contentHash(reviewedForm(content), sha256))).toBe(input.items[index]!.reviewedHash);
      // The last event that was committed before its own.
      expect(content.log).toEqual({
        sequence: Number(first!.sequence) - 1,
        hash: hex(first!.previousHash),
      });
      expect(content.authorisedBy).toEqual({
        ...{ name: "Sam Signer", role: "Signatory", on: "2026-03-05" },
        at: "2026-03-05T10:00:00.000Z",
        meaning: "I reviewed these results and authorise their release.",
      });
    }
    await inScope(laboratory, async (tx) => {
      expect((await tx.run.findUniqueOrThrow({ where: { id: built.run.id } })).state).toBe("signed-off");
      const orders = await tx.order.findMany({ where: { id: { in: built.orders.map(({ id }) => id) } } });
      expect(orders.map(({ state }) => state)).toEqual(["completed", "completed"]);
      const events = await tx.auditEvent.findMany({
        where: { entityKind: "certificate", entityId: { in: certificates.map(({ id }) => id) } },
        orderBy: { sequence: "asc" },
      });
      expect(events.map(({ action }) => action)).toEqual([
        "certificate.signed-off",
        "certificate.signed-off",
      ]);
      expect(JSON.parse(events[0]!.payload).contentHash).toBe(
        hex((await stored(certificates[0]!.sensorId))!.contentHash),
      );
    });
  });

  it("refuses whoever measured, and anyone without the permission", async () => {
    const built = await buildRun(world, { owners: ["north"] });
    const input = await signOffInput(built);
    await expect(sign(world.people.technician, input)).rejects.toMatchObject({ refusal: { code: "rule" } });
    await expect(
      sign(world.people.technician, { ...input, exceptionReason: "Nobody else is here this week." }),
    ).rejects.toMatchObject({ refusal: { code: "rule" } });
    for (const actor of [world.people.quality, world.people.desk, world.people.north])
      await expect(sign(actor, input)).rejects.toMatchObject({ refusal: { code: "not-permitted" } });
    expect(await stored(built.sensors[0]!.id)).toBeNull();
  });

  it("refuses another hash, another evaluation, a returned run and a second time", async () => {
    const built = await buildRun(world, { owners: ["north"] });
    const input = await signOffInput(built);
    const [item] = input.items;
    await expect(
      sign(world.people.signatory, { ...input, items: [{ ...item!, reviewedHash: "0".repeat(64) }] }),
    ).rejects.toMatchObject({ refusal: { code: "changed-meanwhile" } });
    const second = await inScope(laboratory, (tx) =>
      addEvaluation(tx, world, built.run.id, 2, { owners: ["north"] }),
    );
    await expect(sign(world.people.signatory, input)).rejects.toMatchObject({
      refusal: { code: "changed-meanwhile" },
    });
    await openForSigners(built.run.id);
    // The new evaluation with the hash of the old one.
    await expect(sign(world.people.signatory, { ...input, evaluationId: second.id })).rejects.toMatchObject({
      refusal: { code: "changed-meanwhile" },
    });
    const fresh = await signOffInput(built, built.sensors, second.id);
    await sign(world.people.signatory, fresh);
    await expect(sign(world.people.signatory, fresh)).rejects.toMatchObject({
      refusal: { code: "wrong-state" },
    });
  });

  it("notices a change of what stands on the certificate, such as the customer's address", async () => {
    const built = await buildRun(world, { owners: ["south"] });
    const input = await signOffInput(built);
    await inScope(laboratory, (tx) =>
      tx.customer.update({
        where: { id: world.south.id },
        data: { addressLines: "3 Invented Lane\nElsewhere" },
      }),
    );
    await expect(sign(world.people.signatory, input)).rejects.toMatchObject({
      refusal: { code: "changed-meanwhile" },
    });
  });

  it("returns with a reason: nothing is lost, and the run waits for the technician", async () => {
    const built = await buildRun(world, { owners: ["north", "north"] });
    const input = await signOffInput(built, [built.sensors[0]!]);
    await sign(world.people.signatory, input);
    await execute(
      returnRun,
      world.people.signatory,
      {
        runId: built.run.id,
        evaluationId: built.evaluation.id,
        reason: "The window at 600 °C ends too late.",
      },
      signClock,
    );
    await inScope(laboratory, async (tx) => {
      expect((await tx.run.findUniqueOrThrow({ where: { id: built.run.id } })).state).toBe("returned");
      const states = await tx.sensor.findMany({ where: { id: { in: built.sensors.map(({ id }) => id) } } });
      expect(states.map(({ state }) => state).sort()).toEqual(["evaluated", "issued"]);
      expect(await tx.result.count({ where: { runId: built.run.id } })).toBe(4);
      const events = await tx.auditEvent.findMany({ where: { entityId: built.run.id } });
      expect(events.map(({ action }) => action)).toEqual(["review.returned"]);
    });
    await expect(
      sign(world.people.signatory, await signOffInput(built, [built.sensors[1]!])),
    ).rejects.toMatchObject({ refusal: { code: "wrong-state" } });
    await expect(
      execute(
        returnRun,
        world.people.signatory,
        { runId: built.run.id, evaluationId: built.evaluation.id, reason: "no" },
        signClock,
      ),
    ).rejects.toMatchObject({ refusal: { code: "invalid", fields: { reason: expect.any(String) } } });
  });

  it("gives 50 parallel sign-offs 50 numbers without a gap, though some are refused in between", async () => {
    const runs: Awaited<ReturnType<typeof buildRun>>[] = [];
    for (const owner of ["north", "south", "north", "south", "north"] as const)
      runs.push(await buildRun(world, { owners: Array.from({ length: 10 }, () => owner) }));
    const before = await inScope(laboratory, (tx) => tx.certificate.count());
    const inputs = await Promise.all(
      runs.flatMap((built) => built.sensors.map((sensor) => signOffInput(built, [sensor]))),
    );
    const spoiled = inputs.slice(0, 5).map((input) => ({
      ...input,
      items: [{ ...input.items[0]!, reviewedHash: "f".repeat(64) }],
      act: signingAct(),
    }));
    const settled = await Promise.allSettled(
      [...inputs.slice(0, 25), ...spoiled, ...inputs.slice(25)].map((input) =>
        sign(world.people.signatory, input),
      ),
    );
    const refused = settled.flatMap((one) =>
      one.status === "rejected"
        ? [(one.reason as { refusal?: { code: string } }).refusal?.code ?? one.reason]
        : [],
    );
    expect([settled.length, refused]).toEqual([55, Array(5).fill("changed-meanwhile")]);
    const numbers = await inScope(laboratory, (tx) =>
      tx.certificate.findMany({ select: { number: true }, orderBy: { number: "asc" } }),
    );
    expect(numbers.map(({ number }) => number)).toEqual(
      Array.from({ length: before + 50 }, (_, index) => `C-2026-${String(index + 1).padStart(4, "0")}`),
    );
  });

  it("puts a sensor without any result back when the rest is signed off", async () => {
    const built = await buildRun(world, {
      owners: ["north", "north"],
      change: (point, index) =>
        index === 0
          ? {
              state: "invalid",
              sensor: point.sensor,
              setpoint: point.setpoint,
              type: point.type,
              nominalCelsius: point.nominalCelsius,
              reason: "open circuit",
            }
          : point,
    });
    const results = await inScope(laboratory, (tx) =>
      tx.result.findMany({ where: { runId: built.run.id, state: "invalid" } }),
    );
    const failed = results[0]!.sensorId;
    const good = built.sensors.filter(({ id }) => id !== failed);
    await sign(world.people.signatory, await signOffInput(built, good));
    const sensor = await inScope(laboratory, (tx) => tx.sensor.findUniqueOrThrow({ where: { id: failed } }));
    expect(sensor.state).toBe("received");
  });
});

describe("a signed certificate", () => {
  it("cannot be changed or removed, not even by the laboratory's own database role", async () => {
    const built = await buildRun(world, { owners: ["north"] });
    const { certificates } = await sign(world.people.signatory, await signOffInput(built));
    const client = new pg.Client({ connectionString: database.runtimeUrl });
    await client.connect();
    try {
      await client.query("SELECT set_config('app.scope', 'laboratory', false)");
      for (const statement of [
        "UPDATE certificate SET number = 'C-2026-9999' WHERE id = $1",
        "DELETE FROM certificate WHERE id = $1",
      ])
        await expect(client.query(statement, [certificates[0]!.id])).rejects.toThrow(/permission denied/);
    } finally {
      await client.end();
    }
    const admin = new pg.Client({ connectionString: database.adminUrl });
    await admin.connect();
    try {
      await expect(
        admin.query("UPDATE certificate SET number = 'C-2026-9999' WHERE id = $1", [certificates[0]!.id]),
      ).rejects.toThrow(/append-only/);
    } finally {
      await admin.end();
    }
  });
});
