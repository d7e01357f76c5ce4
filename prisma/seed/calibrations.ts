import type { z } from "zod";
import { checkKeys } from "@/lib/domain/calibration/acceptance-check";
import { defaultParents } from "@/lib/domain/calibration/parent";
import type { CalibrationInput } from "@/lib/domain/calibration/schema";
import { decideCalibration } from "@/lib/operations/calibration/decide";
import { recordCalibration } from "@/lib/operations/calibration/record";
import { inventedCertificate } from "./invented-certificate";
import type { Cast } from "./people";
import type { Teller } from "./teller";

type Input = z.input<typeof CalibrationInput>;

/** What every certificate of the demonstration says besides its figures. */
type Papers = Pick<
  Input,
  "equipmentId" | "certificate" | "itemSerial" | "issuer" | "route" | "performedOn" | "dueOn" | "findings"
> &
  Partial<Input>;

const fileOf = ({ certificate, issuer, itemSerial, performedOn }: Papers) => ({
  kind: "file" as const,
  fileName: `${certificate}.pdf`,
  bytes: inventedCertificate([
    "CALIBRATION CERTIFICATE (invented for a demonstration: nobody issued it)",
    `Number ${certificate}`,
    `Issued by ${issuer}`,
    `Item: serial number ${itemSerial}`,
    `Performed on ${performedOn}`,
    "The results stand in the record beside this file.",
  ]),
});

/** A certificate comes in, with its file and what it stands on, and the signatory accepts it the day after. */
export const tellCalibration = async (
  { tell, at }: Teller,
  { manager, signatory }: Cast,
  days: number,
  papers: Papers,
): Promise<string> => {
  const isOutside = papers.route !== "in-house";
  const { id } = await tell(recordCalibration, manager, at(days), {
    scale: "ITS-90",
    traceabilityStatement: isOutside
      ? "The results are traceable to the SI through national standards (invented)."
      : "By our own procedure, with instruments that are traceable to the SI (invented).",
    parents: defaultParents(papers.route, papers.issuer).map((parent) => ({ ...parent })),
    document: isOutside ? fileOf(papers) : null,
    ...papers,
  });
  await tell(decideCalibration, signatory, at(days - 1), {
    id,
    decision: "accepted",
    confirmed: [...checkKeys],
  });
  return id;
};
