import { inScope } from "@/lib/data/in-scope";
import { canonical } from "@/lib/domain/audit/canonical";
import { buildRun } from "./build-run";
import type { World } from "./build-world";
import { inServiceRow } from "./in-service";
import { signRun } from "./sign-run";

const laboratory = { kind: "laboratory" } as const;

/** A working standard that this laboratory calibrated: one of its own certificates is the calibration's. */
const workingStandard = (world: World, certificate: { readonly id: string; readonly number: string }) =>
  inScope(laboratory, async (tx) => {
    const equipment = await tx.equipment.create({
      data: {
        tag: `W-${certificate.number}`,
        kind: "reference",
        maker: "Invented Works",
        model: "working standard",
        serial: `SN-${certificate.number}`,
        particulars: JSON.stringify({
          kind: "reference",
          type: "S",
          protection: "alumina-sheath",
          driftHalfWidthCelsius: 0.25,
          inhomogeneityRelativeHalfWidth: 0.0002,
          basis: "invented",
        }),
      },
    });
    await inServiceRow(tx, equipment.id, world.people.quality.personId);
    const calibration = await tx.calibration.create({
      data: {
        equipmentId: equipment.id,
        certificate: certificate.number,
        issuer: "Invented Calibration Laboratory",
        route: "in-house",
        source: "in-house",
        inHouseCertificateId: certificate.id,
        performedOn: new Date("2026-03-02"),
        dueOn: new Date("2027-03-02"),
        findings: JSON.stringify({
          kind: "reference",
          points: [
            { celsius: 600, deviationMicrovolt: -3 },
            { celsius: 1000, deviationMicrovolt: -6 },
          ],
          expanded: 1.3,
          coverageFactor: 2,
          unit: "celsius",
        }),
        recordedAt: new Date("2026-03-02T07:00:00Z"),
      },
    });
    await tx.calibrationDecision.create({
      data: {
        calibrationId: calibration.id,
        decision: "accepted",
        checks: "[]",
        decidedById: world.people.quality.personId,
        decidedAt: new Date("2026-03-02T07:30:00Z"),
      },
    });
    return equipment;
  });

/** A run measured with it: the run's last evaluation names it as its only reference. */
const runWith = async (
  world: World,
  equipment: Awaited<ReturnType<typeof workingStandard>>,
  number: string,
) => {
  const built = await buildRun(
    { ...world, references: [equipment, world.references[1]] },
    { owners: ["south"] },
  );
  const evaluation = await inScope(laboratory, async (tx) => {
    const last = await tx.evaluation.findUniqueOrThrow({
      where: { id: built.evaluation.id },
      include: { results: true },
    });
    const head = JSON.parse(last.evidence);
    const [first] = head.references;
    head.references = [
      {
        ...first,
        id: equipment.tag,
        calibration: {
          certificate: number,
          issuer: "Invented Calibration Laboratory",
          performedOn: "2026-03-02",
          dueOn: "2027-03-02",
        },
      },
    ];
    const { id: _id, results, ...rest } = last;
    const again = await tx.evaluation.create({ data: { ...rest, sequence: 2, evidence: canonical(head) } });
    await tx.result.createMany({
      data: results.map(({ id: _result, ...row }) => ({ ...row, evaluationId: again.id })),
    });
    return again;
  });
  return { ...built, evaluation };
};

/**
 * A sensor is calibrated and its certificate signed; it becomes a working standard; a customer's sensor is calibrated
 * with that, and its certificate signed too.
 */
export const signedWithWorkingStandard = async (world: World) => {
  const upper = await buildRun(world, { owners: ["north"] });
  const [own] = await signRun(world.people.signatory, upper);
  const equipment = await workingStandard(world, own!);
  const built = await runWith(world, equipment, own!.number);
  const [certificate] = await signRun(world.people.signatory, built);
  return { own: own!, equipment, built, certificate: certificate! };
};
