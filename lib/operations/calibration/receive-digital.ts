import { loadEquipment } from "@/lib/data/equipment/equipment-store";
import { keepDocument } from "@/lib/data/evidence/keep-document";
import { hex } from "@/lib/data/hex";
import { sha256 } from "@/lib/data/sha256";
import { eventOf } from "@/lib/domain/audit/define-event";
import { calibrationEvents } from "@/lib/domain/calibration/events";
import { ReceiveDigitalInput } from "@/lib/domain/calibration/schema";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { type DccProblem, describeDccProblem } from "@/lib/files/dcc/dcc-certificate";
import { knownSchemaFolder } from "@/lib/files/dcc/known-schema-folder";
import { readDcc } from "@/lib/files/dcc/read-dcc";
import { defineOperation } from "../operation";

/** Every problem with its place, one field each, so that the page lists them; nothing is stored. */
const refusedFile = (problems: readonly DccProblem[]): Refused =>
  new Refused({
    code: "invalid",
    message: `The file was refused: ${problems.length === 1 ? "one problem" : `${problems.length} problems`} in it. Nothing was stored. Ask its issuer for a file that holds, or type the certificate.`,
    fields: Object.fromEntries(
      problems.map((problem, index) => [
        `problems.${index}`,
        `${problem.code}: ${describeDccProblem(problem)}`,
      ]),
    ),
  });

/** A digital calibration certificate is read whole, or refused with every problem's place; then kept by its hash. */
export const receiveDigital = defineOperation({
  name: "calibration/receive-digital",
  permission: "calibration.record",
  input: ReceiveDigitalInput,
  perform: async ({ actor, now, tx }, { equipmentId, file, schemaFolder }) => {
    const equipment = await loadEquipment(tx, equipmentId);
    if (!equipment) throw new Refused({ code: "not-found", message: "This equipment is not here." });
    const outcome = readDcc(file.bytes, knownSchemaFolder(schemaFolder));
    if (!outcome.ok) throw refusedFile(outcome.problems);
    const documentId = await keepDocument(tx, {
      ...file,
      mediaType: "application/xml",
      receivedById: personIdOf(actor),
      receivedAt: now,
    });
    return {
      value: { documentId, equipmentId: equipment.id },
      events: [
        eventOf(calibrationEvents.digitalReceived, equipment.id, {
          tag: equipment.tag,
          certificate: outcome.certificate.uniqueIdentifier,
          sha256: hex(sha256(file.bytes)),
        }),
      ],
    };
  },
});
