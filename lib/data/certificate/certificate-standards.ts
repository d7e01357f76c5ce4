import { type Message, say } from "@/lib/domain/certificate/catalogue/message";
import type { CertificateStandard } from "@/lib/domain/certificate/content";
import type { StandardPart } from "@/lib/domain/certificate/parts";
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
  what: Message,
): StandardPart => {
  const known = equipment.find((candidate) => candidate.tag === item.id);
  const record = known?.calibrations.find(
    (calibration) => calibration.certificate === item.calibration?.certificate,
  );
  return {
    role,
    description: known
      ? say("standard.of-maker", { what, maker: `${known.maker} ${known.model}`.trim() })
      : what,
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
): readonly StandardPart[] => [
  ...head.references.map((reference) =>
    line("reference", equipment, reference, say("standard.reference", { type: reference.type })),
  ),
  line("voltmeter", equipment, head.voltmeter, say("standard.voltmeter")),
  line("scanner", equipment, head.scanner, say("standard.scanner")),
  ...head.junctions
    .filter((junction) => junctionTags.size === 0 || junctionTags.has(junction.id))
    .map((junction) =>
      line("junction", equipment, junction, say("standard.junction", { celsius: String(junction.celsius) })),
    ),
];
