import type { z } from "zod";
import { checkKeys } from "@/lib/domain/calibration/acceptance-check";
import type { CalibrationInput } from "@/lib/domain/calibration/schema";
import { equipmentKinds } from "@/lib/domain/equipment/types";
import type { Actor } from "@/lib/domain/staff/actor";
import { decideCalibration } from "@/lib/operations/calibration/decide";
import { recordCalibration } from "@/lib/operations/calibration/record";
import { execute } from "@/lib/operations/execute";
import { approveProvider } from "@/lib/operations/provider/approve";
import { recordProvider } from "@/lib/operations/provider/record";

type Clock = () => Date;
type Input = z.input<typeof CalibrationInput>;

/** Who issues the certificates of these tests, approved for everything. */
export const inventedIssuer = "Invented Institute";

export const approveIssuer = async (manager: Actor, clock: Clock, name = inventedIssuer): Promise<string> => {
  const { id } = await execute(recordProvider, manager, { name, route: "nmi" }, clock);
  await execute(
    approveProvider,
    manager,
    {
      id,
      version: 1,
      approvedFrom: "2025-01-01",
      approvedUntil: "2028-12-31",
      scope: equipmentKinds.map((kind) => ({ kind })),
      note: "invented",
    },
    clock,
  );
  return id;
};

/** A certificate's file, as small as one can be. */
export const certificateFile = (text = "invented") => ({
  kind: "file" as const,
  fileName: "certificate.pdf",
  bytes: new TextEncoder().encode(`%PDF-1.4\n% ${text}\n`),
});

export const certificateOf = (
  equipmentId: string,
  fields: Pick<Input, "certificate" | "itemSerial" | "performedOn" | "dueOn" | "findings"> & Partial<Input>,
): Input => ({
  equipmentId,
  issuer: inventedIssuer,
  route: "nmi",
  traceabilityStatement: "Traceable to the SI (invented).",
  document: certificateFile(fields.certificate),
  ...fields,
});

/** Accepted by the signatory, who looked at every answer. */
export const acceptCalibration = (signatory: Actor, id: string, clock: Clock) =>
  execute(
    decideCalibration,
    signatory,
    { id, decision: "accepted", confirmed: [...checkKeys], reason: "looked at, invented" },
    clock,
  );

/** Recorded by one person and accepted by another, as everything is that a run may use. */
export const calibrate = async (
  who: { readonly manager: Actor; readonly signatory: Actor },
  input: Input,
  clock: Clock,
): Promise<string> => {
  const { id } = await execute(recordCalibration, who.manager, input, clock);
  await acceptCalibration(who.signatory, id, clock);
  return id;
};
