import type { DccCertificate, DccIdentification } from "../calibration/dcc-certificate";
import { demanded, type IssuedFinding } from "./issued-finding";
import { own } from "./terms";

const isSha256 = (text: string): boolean => /^[0-9a-f]{64}$/.test(text);
const has = (all: readonly DccIdentification[], issuer: DccIdentification["issuer"]): boolean =>
  all.some((one) => one.issuer === issuer);

const items = ({ items: all }: DccCertificate): readonly IssuedFinding[] =>
  all.flatMap(({ identifications, place }) =>
    demanded(
      has(identifications, "manufacturer") && has(identifications, "calibrationLaboratory"),
      "7.8.2.1 g",
      "The item needs both its serial number and its identity in the laboratory.",
      place,
    ),
  );

const people = ({ responsible }: DccCertificate): readonly IssuedFinding[] =>
  demanded(
    responsible.filter(({ isMainSigner }) => isMainSigner).length === 1,
    "7.8.2.1 o",
    "One person authorises a certificate: exactly one is the main signer.",
    responsible[0]?.place,
  );

/** 7.8.8.3: a replacement says which certificate it replaces, twice in the file, and both must be the same. */
const change = ({
  change: said,
  previousReport,
  uniqueIdentifier,
}: DccCertificate): readonly IssuedFinding[] => {
  if (said === null && previousReport === null) return [];
  const place = said?.place ?? previousReport?.place;
  return [
    ...demanded(
      said !== null &&
        previousReport !== null &&
        said.replacedUniqueIdentifier === previousReport.uniqueIdentifier &&
        said.replacedUniqueIdentifier !== uniqueIdentifier,
      "7.8.8.3",
      "What is amended or replaced is named once as changed and once as the previous report, by the same number and never its own.",
      place,
    ),
    ...demanded(
      previousReport === null || (previousReport.procedure === "SHA-256" && isSha256(previousReport.value)),
      "7.8.8.3",
      "The previous report is named with the SHA-256 of its content.",
      previousReport?.place,
    ),
  ];
};

const hash = ({ identifications }: DccCertificate): readonly IssuedFinding[] => {
  const found = identifications.filter(({ refTypes }) => refTypes.includes(own("contentHash")));
  return demanded(
    found.length === 1 && isSha256(found[0]?.value ?? ""),
    "7.8.1.1",
    "The SHA-256 of the content stands once among the certificate's identifications.",
    found[0]?.place,
  );
};

/** Who, whose, which item, when, by whose authority: what the schema leaves optional and a certificate of ours has. */
export const checkIdentity = (certificate: DccCertificate): readonly IssuedFinding[] => [
  ...demanded(certificate.schemaVersion === "3.3.0", "7.8.2.1", "We write DCC 3.3.0."),
  ...demanded(certificate.issueDate !== null, "7.8.2.1 j", "The date of issue is missing."),
  ...demanded(certificate.receiptDate !== null, "7.8.2.1 h", "The date of receipt is missing."),
  ...demanded(
    certificate.languages.mandatory.every((language) => certificate.languages.used.includes(language)),
    "7.8.1.2",
    "A language that binds is one of those used.",
  ),
  ...hash(certificate),
  ...items(certificate),
  ...people(certificate),
  ...change(certificate),
];
