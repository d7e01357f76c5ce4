import type { DccCertificate } from "../calibration/dcc-certificate";
import { demanded, type IssuedFinding } from "./issued-finding";

/** Clauses that a certificate speaks to even where nothing applies. */
const spokenTo = [
  ["7.8.2.1 c", "place of the measurement"],
  ["7.8.2.1 k", "sampling"],
  ["7.8.2.1 l", "what the results relate to"],
  ["7.8.2.1 n", "additions, deviations and exclusions"],
  ["7.8.2.1 p", "external results"],
  ["7.8.4.1 d", "adjustment"],
] as const;

const statements = ({ statements: all }: DccCertificate): readonly IssuedFinding[] =>
  spokenTo.flatMap(([clause, what]) =>
    demanded(
      all.some(({ references, declaration }) => references.includes(clause) && declaration.length > 0),
      clause,
      `No statement speaks of this clause: ${what}.`,
    ),
  );

/** 7.8.4.1 c: how the results are traceable, and through which certificates. */
const traceability = ({ statements: all, equipment }: DccCertificate): readonly IssuedFinding[] => [
  ...demanded(
    all.some(({ traceable, declaration }) => traceable === true && declaration.length > 0),
    "7.8.4.1 c",
    "No statement says that and how the results are metrologically traceable.",
  ),
  ...demanded(
    equipment.some(({ certificate }) => certificate !== null),
    "7.8.4.1 c",
    "No standard is named with a certificate of its own.",
  ),
  ...equipment.flatMap(({ certificate }) =>
    certificate === null
      ? []
      : demanded(
          certificate.procedure === "SHA-256"
            ? /^[0-9a-f]{64}$/.test(certificate.value)
            : certificate.procedure === "none" && certificate.value === "none",
          "7.8.4.1 c",
          "A certificate is named with the SHA-256 of its file, or with the word none where no file is kept.",
          certificate.place,
        ),
  ),
  ...equipment.flatMap(({ certificate }) =>
    demanded(
      certificate === null || certificate.inValidityRange === true,
      "6.4.6",
      "A calibration was not in date.",
      certificate?.place,
    ),
  ),
];

const methods = ({ methods: all }: DccCertificate): readonly IssuedFinding[] => {
  const isUncertainty = ({ refTypes }: (typeof all)[number]): boolean =>
    refTypes.includes("basic_uncertainty");
  return [
    ...demanded(
      all.some((method) => !isUncertainty(method)),
      "7.8.2.1 f",
      "The method of calibration is missing.",
    ),
    ...demanded(
      all.some((method) => isUncertainty(method) && method.description.length > 0),
      "7.8.4.1 a",
      "What U and k are is missing.",
    ),
  ];
};

/** 7.8.4.1 b: an emf means nothing without the temperature of its reference junction. */
const junctions = ({ conditions, results }: DccCertificate): readonly IssuedFinding[] => {
  const measured = results.filter(({ refTypes }) => refTypes.includes("gp_measuringResult1"));
  const known = conditions.filter(
    ({ kind, data }) =>
      kind === "reference-junction" && (data.quantities.length > 0 || data.texts.length > 0),
  );
  return demanded(
    measured.length > 0 && known.length === measured.length,
    "7.8.4.1 b",
    `The temperature of the reference junction is given ${known.length} times for ${measured.length} results.`,
  );
};

/** Method, conditions, traceability and the statements that ISO/IEC 17025:2017 asks for, which the schema does not. */
export const checkSurroundings = (certificate: DccCertificate): readonly IssuedFinding[] => [
  ...methods(certificate),
  ...junctions(certificate),
  ...traceability(certificate),
  ...statements(certificate),
];
