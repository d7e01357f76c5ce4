import type { CertificateStandard } from "@/lib/domain/certificate/content";
import type { EvidenceHead } from "@/lib/domain/review/evidence-head";
import type { ReviewRun } from "../review/load-review-run";

type Equipment = ReviewRun["standards"];

/**
 * One line. The certificate is the one the evaluation used (from its evidence), never the newest on record; only the
 * route is looked up beside it.
 */
const line = (
  role: CertificateStandard["role"],
  equipment: Equipment,
  item: {
    readonly id: string;
    readonly serial?: string;
    readonly calibration: EvidenceHead["scanner"]["calibration"];
  },
  description: string,
): CertificateStandard => {
  const known = equipment.find((candidate) => candidate.tag === item.id);
  const record = known?.calibrations.find(
    (calibration) => calibration.certificate === item.calibration?.certificate,
  );
  return {
    role,
    description: `${description}${known ? `, ${known.maker} ${known.model}` : ""}`.trim(),
    tag: item.id,
    serial: item.serial || known?.serial || "not stated",
    calibrationCertificate: item.calibration?.certificate ?? "",
    issuer: item.calibration?.issuer ?? "",
    accreditation: item.calibration?.accreditation ?? "",
    route: record?.route ?? "",
    performedOn: item.calibration?.performedOn ?? "",
    dueOn: item.calibration?.dueOn ?? "",
    ...(record?.documentSha256 ? { documentSha256: record.documentSha256 } : {}),
  };
};

/** References, voltmeter, scanner and the junctions that these channels used, in that order. */
export const certificateStandards = (
  head: EvidenceHead,
  equipment: Equipment,
  junctionTags: ReadonlySet<string>,
): readonly CertificateStandard[] => [
  ...head.references.map((reference) =>
    line("reference", equipment, reference, `Type ${reference.type} reference thermocouple`),
  ),
  line("voltmeter", equipment, head.voltmeter, "Voltmeter"),
  line("scanner", equipment, head.scanner, "Scanner"),
  ...head.junctions
    .filter((junction) => junctionTags.size === 0 || junctionTags.has(junction.id))
    .map((junction) => line("junction", equipment, junction, `Reference junction at ${junction.celsius} °C`)),
];
