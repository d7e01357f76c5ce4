import { expect, it } from "vitest";
import { verifyChain } from "@/lib/data/audit/verify-chain";
import { inScope } from "@/lib/data/in-scope";
import type { MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import type { Actor } from "@/lib/domain/staff/actor";
import { reviewRunView } from "@/lib/views/review-run";

const laboratory = { kind: "laboratory" } as const;

/** What the demonstration promises. Asked of the one that is tampered with afterwards: to seed it takes longer than to ask. */
export const demonstrationTests = (): void => {
  it("leaves one customer's sensors certified and the other's waiting for the signatory", async () => {
    const states = await inScope(laboratory, (tx) =>
      tx.sensor.findMany({ select: { serial: true, state: true }, orderBy: { serial: "asc" } }),
    );
    const of = (state: string) =>
      states.filter((sensor) => sensor.state === state).map(({ serial }) => serial);
    expect(of("issued")).toEqual(["HV-WS-03", "HX-K-4471", "HX-K-4472"]);
    // Sent back before the others.
    expect(of("collected")).toEqual(["HX-S-0093"]);
    expect(of("in-review")).toEqual(["OB-0417", "OB-2218", "OB-2219"]);
  });

  it("gives every certificate its rendered document and a gapless number", async () => {
    const certificates = await inScope(laboratory, (tx) =>
      tx.certificate.findMany({ include: { files: true }, orderBy: { number: "asc" } }),
    );
    expect(certificates.map(({ number }) => number.slice(-4))).toEqual(["0001", "0002", "0003", "0004"]);
    for (const { files } of certificates)
      expect(files.map(({ mediaType }) => mediaType).toSorted()).toEqual([
        "application/pdf",
        "application/xml",
      ]);
  });

  it("has a working standard whose calibration is the laboratory's own certificate", async () => {
    const standard = await inScope(laboratory, (tx) =>
      tx.equipment.findUniqueOrThrow({
        where: { tag: "WS-S-03" },
        include: { calibrations: { include: { decisions: true } } },
      }),
    );
    const [calibration] = standard.calibrations;
    expect(calibration?.route).toBe("in-house");
    expect(calibration?.decisions.map(({ decision }) => decision)).toEqual(["accepted"]);
    const own = await inScope(laboratory, (tx) =>
      tx.certificate.findUniqueOrThrow({ where: { id: calibration?.inHouseCertificateId ?? "" } }),
    );
    expect(own.number).toBe(calibration?.certificate);
  });

  it("has references that were calibrated twice, each by its own figures", async () => {
    const references = await inScope(laboratory, (tx) =>
      tx.equipment.findMany({ where: { tag: { startsWith: "REF-S-0" } }, include: { calibrations: true } }),
    );
    expect(references).toHaveLength(2);
    for (const { calibrations } of references)
      expect(new Set(calibrations.map(({ findings }) => findings)).size).toBe(2);
  });

  it("judges each customer's sensors by the rule that customer agreed, in one load", async () => {
    const results = await inScope(laboratory, (tx) =>
      tx.result.findMany({ select: { sensorId: true, customerId: true, point: true } }),
    );
    const customers = await inScope(laboratory, (tx) =>
      tx.customer.findMany({ select: { id: true, name: true } }),
    );
    const points = (name: string) =>
      results
        .filter(
          ({ customerId }) => customerId === customers.find((customer) => customer.name.startsWith(name))?.id,
        )
        .map(({ point }) => JSON.parse(point) as MeasuredPoint)
        .filter(({ conformity }) => conformity.tolerance !== null);
    const guarded = points("Brandt");
    const simple = points("Oakes");
    expect(guarded.length).toBeGreaterThan(10);
    expect(simple.length).toBeGreaterThan(10);
    for (const { conformity, expandedCelsius } of guarded)
      expect(conformity.acceptanceCelsius ?? 0).toBeCloseTo(
        Math.max(0, (conformity.tolerance?.celsius ?? 0) - expandedCelsius),
        9,
      );
    for (const { conformity } of simple) {
      expect(conformity.acceptanceCelsius).toBe(conformity.tolerance?.celsius);
      expect(["pass", "fail"]).toContain(conformity.state);
    }
  });

  it("leaves an audit chain that verifies", async () => {
    const verdict = await verifyChain();
    expect(verdict.kind).toBe("whole");
  });

  it("has a sensor on hold with a question that waits, a complaint closed, a finding open, and places", async () => {
    await inScope(laboratory, async (tx) => {
      const hold = await tx.hold.findFirstOrThrow();
      expect(await tx.holdRelease.count()).toBe(0);
      const question = await tx.question.findFirstOrThrow({ where: { holdId: hold.id } });
      expect(await tx.answer.count({ where: { questionId: question.id } })).toBe(0);
      const stories = await tx.nonconformity.findMany({ orderBy: { number: "asc" } });
      // The first opened itself: a check of the bench fell outside its limit.
      expect(stories.map(({ kind, state }) => [kind, state])).toEqual([
        ["nonconforming-work", "open"],
        ["complaint", "closed"],
        ["nonconforming-work", "examined"],
      ]);
      expect(await tx.storagePlace.count()).toBe(2);
      expect(await tx.custodyEvent.count({ where: { kind: "stored" } })).toBe(3);
    });
  });

  it("has an offer that was agreed to and one that waits, a promised day, and a part of an order on its way back", async () => {
    const told = await inScope(laboratory, async (tx) => ({
      offers: await tx.quotation.count(),
      answers: (await tx.agreement.findMany()).map(({ answer, cameBy }) => [answer, cameBy]),
      promised: await tx.order.count({ where: { promisedOn: { not: null } } }),
      slots: await tx.furnaceSlot.count({ where: { isReleased: false } }),
      parcels: (await tx.shipment.findMany({ include: { sensors: true } })).map(
        ({ sensors }) => sensors.length,
      ),
      papers: await tx.orderDocument.count(),
    }));
    expect(told).toMatchObject({
      offers: 2,
      answers: [["agreed", "link"]],
      promised: 1,
      parcels: [1],
      papers: 3,
    });
    expect(told.slots).toBeGreaterThan(0);
  });

  it("signs each certificate by password and one-time code, under an authorisation somebody else granted", async () => {
    const { certificates, signatures, granted } = await inScope(laboratory, async (tx) => ({
      certificates: await tx.certificate.findMany({ select: { id: true } }),
      signatures: await tx.signature.findMany(),
      granted: await tx.authorisation.findMany(),
    }));
    const signed = signatures.map(({ certificateId }) => certificateId);
    expect(signed.toSorted()).toEqual(certificates.map(({ id }) => id).toSorted());
    expect(new Set(signatures.map(({ means }) => means))).toEqual(new Set(["password+code"]));
    for (const { personId, authorisationId } of signatures) {
      const held = granted.find(({ id }) => id === authorisationId);
      expect(held).toMatchObject({ personId, activity: "sign-off" });
      expect(held?.grantedById).not.toBe(personId);
    }
  });

  it("has a run to review that stands on nothing in doubt, and in which few things stand out", async () => {
    const { number } = await inScope(laboratory, (tx) =>
      tx.run.findFirstOrThrow({ where: { state: "submitted" }, select: { number: true } }),
    );
    const signatory = await inScope(laboratory, (tx) =>
      tx.personRole.findFirstOrThrow({ where: { role: "signatory" }, select: { personId: true } }),
    );
    const actor: Actor = { kind: "staff", personId: signatory.personId, name: "", roles: ["signatory"] };
    const { inDoubt, exceptions } = await reviewRunView(actor, number);
    expect(inDoubt).toEqual([]);
    expect(exceptions.map(({ kind }) => kind)).toEqual([
      "references-differ",
      "references-differ",
      "conformity",
    ]);
  });
};
