import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import type { Actor } from "@/lib/domain/staff/actor";
import { adoptCertificate } from "@/lib/operations/calibration/adopt-certificate";
import { execute } from "@/lib/operations/execute";
import { calibrationView } from "@/lib/views/calibration";
import { ownCertificatesView } from "@/lib/views/own-certificates";
import { buildRun } from "../../support/build-run";
import { buildWorld, type World } from "../../support/build-world";
import { acceptCalibration } from "../../support/calibrate";
import { type TestDatabase, testDatabase } from "../../support/database";
import { auditSentences, refusalOf } from "../../support/front-desk";
import { signClock, signRun } from "../../support/sign-run";

const laboratory = { kind: "laboratory" } as const;
let database: TestDatabase;
let world: World;
let manager: Actor;
beforeAll(async () => {
  database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  world = await buildWorld();
  manager = world.people.quality;
  // The laboratory's own customer record: what is ordered in its name is its own.
  await inScope(laboratory, (tx) =>
    tx.customer.update({
      where: { id: world.north.id },
      data: { name: "Invented Calibration Laboratory" },
    }),
  );
});
afterAll(async () => {
  await closeDatabase();
  await database.drop();
});

const standardOf = (tag: string, serial: string, type: "S" | "R" = "S") =>
  inScope(laboratory, (tx) =>
    tx.equipment.create({
      data: {
        tag,
        kind: "reference",
        maker: "Invented Works",
        model: "working standard",
        serial,
        calibrationIntervalMonths: 6,
        particulars: JSON.stringify({
          kind: "reference",
          type,
          protection: "alumina-sheath",
          driftHalfWidthCelsius: 0.25,
          inhomogeneityRelativeHalfWidth: 0.0002,
          basis: "invented",
        }),
      },
    }),
  );
const calibrationsOf = (equipmentId: string) =>
  inScope(laboratory, (tx) => tx.calibration.findMany({ where: { equipmentId } }));
const signedOf = async (owner: "north" | "south", before: (serial: string) => Promise<unknown>) => {
  const built = await buildRun(world, { owners: [owner], typeLetter: "S" });
  const [sensor] = built.sensors;
  await before(sensor!.serial);
  const [certificate] = await signRun(world.people.signatory, built);
  return { serial: sensor!.serial, certificate: certificate! };
};

describe("a working standard calibrated in house", () => {
  it("is a link by itself when its certificate is signed, figure by figure, and waits for another person", async () => {
    let equipmentId = "";
    const { certificate, serial } = await signedOf("north", async (given) => {
      equipmentId = (await standardOf("W-1", ` ${given.toLowerCase()}`)).id;
    });
    const [stored, ...others] = await calibrationsOf(equipmentId);
    expect(others).toEqual([]);
    expect(stored).toMatchObject({
      certificate: certificate.number,
      inHouseCertificateId: certificate.id,
      source: "in-house",
      route: "in-house",
      itemSerial: serial,
      issuer: "Invented Calibration Laboratory",
      performedOn: new Date("2026-03-02"),
      dueOn: new Date("2026-09-02"),
      fromCelsius: 600,
      toCelsius: 1000,
    });
    const content = await inScope(laboratory, async (tx) =>
      JSON.parse((await tx.certificate.findUniqueOrThrow({ where: { id: certificate.id } })).content),
    );
    const findings = JSON.parse(stored!.findings);
    expect(findings.points.map((one: { celsius: number }) => one.celsius)).toEqual([600, 1000]);
    expect(
      findings.points.map((one: { deviationMicrovolt: number }) => String(one.deviationMicrovolt)),
    ).toEqual(
      content.rows.map((row: { deviationMicrovolt: string }) =>
        String(Number(row.deviationMicrovolt.replace("\u2212", "-"))),
      ),
    );
    expect(findings).toMatchObject({ unit: "microvolt", expanded: 49, coverageFactor: 2 });
    const view = await calibrationView(world.people.quality, equipmentId, stored!.id);
    expect(view).toMatchObject({
      calibration: { acceptance: "waiting" },
      ownCertificate: { number: certificate.number },
    });
    expect(await auditSentences()).toContain(
      `equipment.own-certificate-adopted: took our own certificate ${certificate.number} for W-1, due again on 2026-09-02`,
    );
    // Who signed recorded it: not the one who accepts it.
    const own = await refusalOf(acceptCalibration(world.people.signatory, stored!.id, signClock));
    expect(own.code).toBe("rule");
    await acceptCalibration(world.people.quality, stored!.id, signClock);
    expect((await ownCertificatesView(manager, equipmentId)).certificates).toEqual([]);
  });

  it("is none of a customer's sensor, of another serial number or of another type", async () => {
    const ids: string[] = [];
    await signedOf("south", async (serial) => ids.push((await standardOf("W-2", serial)).id));
    await signedOf("north", async (serial) => ids.push((await standardOf("W-3", `${serial}9`)).id));
    await signedOf("north", async (serial) => ids.push((await standardOf("W-4", serial, "R")).id));
    for (const id of ids) expect(await calibrationsOf(id)).toEqual([]);
  });

  it("signed before it was recorded as equipment, is taken over by a quality manager, once", async () => {
    const { certificate, serial } = await signedOf("north", async () => {});
    const { id } = await standardOf("W-5", serial);
    const other = await standardOf("W-6", "other");
    const { certificates } = await ownCertificatesView(manager, id);
    expect(certificates.map((one) => [one.certificate, one.dueOn])).toEqual([
      [certificate.number, "2026-09-02"],
    ]);
    const adopt = (equipmentId: string, dueOn = "2026-09-02", actor = manager) =>
      execute(adoptCertificate, actor, { equipmentId, certificate: certificate.number, dueOn }, signClock);
    expect((await refusalOf(adopt(id, "2026-09-02", world.people.technician))).code).toBe("not-permitted");
    expect((await refusalOf(adopt(other.id))).message).toMatch(/is not of W-6/);
    expect((await refusalOf(adopt(id, "2026-03-02"))).fields).toHaveProperty("dueOn");
    await adopt(id);
    expect((await refusalOf(adopt(id))).fields).toHaveProperty("certificate");
    expect(await calibrationsOf(id)).toHaveLength(1);
  });

  it("is not calibrated by a certificate that was withdrawn", async () => {
    const { certificate, serial } = await signedOf("north", async () => {});
    const { id: equipmentId } = await standardOf("W-7", serial);
    expect((await ownCertificatesView(manager, equipmentId)).certificates).toHaveLength(1);
    await inScope(laboratory, (tx) =>
      tx.certificateEnding.create({
        data: {
          ...{ certificateId: certificate.id, customerId: world.north.id, kind: "withdrawn" },
          ...{ reason: "another sensor (invented)", decidedAt: signClock() },
          decidedById: world.people.signatory.personId,
        },
      }),
    );
    expect((await ownCertificatesView(manager, equipmentId)).certificates).toEqual([]);
    const adopted = { equipmentId, certificate: certificate.number, dueOn: "2026-09-02" };
    expect(await refusalOf(execute(adoptCertificate, manager, adopted, signClock))).toMatchObject({
      code: "wrong-state",
      message: expect.stringMatching(/is withdrawn since 2026-03-05/),
    });
    expect(await calibrationsOf(equipmentId)).toEqual([]);
  });
});
