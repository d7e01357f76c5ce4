import type { DccCertificate, DccCondition, DccPlace, DccReferral, DccText } from "./dcc-certificate";
import type { DccProposal, Proposed } from "./dcc-proposal";
import type { ParentInput } from "./parent";

/** What a digital certificate says for one field of the form: the value, as it is written, and where. */
export type Said = {
  /** The field's name in the form and in the operation's input. */
  readonly field: string;
  readonly label: string;
  readonly value: string | number;
  readonly written: string;
  /** What was done to it; empty when it stands as written. */
  readonly how: string;
  readonly place: DccPlace;
};

/** Tables of the findings that a file can fill. */
export const saidPoints = ["findings.points", "findings.corrections"] as const;

/** The certificate's words in English where it has them, else in its first language. */
const wordsOf = (text: DccText): string =>
  (text.find(({ lang }) => lang === "en") ?? text[0])?.text.trim() ?? "";

const word = (field: string, label: string, value: string | null, place: DccPlace): readonly Said[] =>
  value ? [{ field, label, value, written: value, how: "", place }] : [];

const figure = (field: string, label: string, { value, written, how, from }: Proposed): Said => ({
  field,
  label,
  value,
  written: written.replaceAll(/\\[a-z\\]+/g, (unit) => unitSigns[unit] ?? unit),
  how,
  place: from,
});

const unitSigns: Readonly<Record<string, string>> = {
  "\\degreecelsius": "°C",
  "\\kelvin": "K",
  "\\metre": "m",
  "\\milli\\metre": "mm",
  "\\volt": "V",
  "\\milli\\volt": "mV",
  "\\micro\\volt": "µV",
  "\\ohm": "Ω",
  "\\percent": "%",
  "\\pascal": "Pa",
  "\\hecto\\pascal": "hPa",
};

const conditionText = ({ name, description, data }: DccCondition): string => {
  const figures = data.quantities
    .flatMap(({ columns }) => columns[0] ?? [])
    .flatMap(({ written, units }) =>
      written.map((one, index) => {
        const unit = units[index] ?? units[0] ?? "";
        return `${one} ${unitSigns[unit] ?? unit}`.trim();
      }),
    );
  return [wordsOf(name), figures.join(" to ") || wordsOf(description)].filter(Boolean).join(": ");
};

const serialOf = ({ items }: DccCertificate) =>
  items
    .flatMap(({ identifications }) => identifications)
    .find(({ issuer, refTypes }) => issuer === "manufacturer" || refTypes.includes("basic_serialNumber"));

const papers = (certificate: DccCertificate): readonly Said[] => {
  const root: DccPlace = { path: "/digitalCalibrationCertificate/administrativeData", line: 0 };
  const core: DccPlace = { ...root, path: `${root.path}/coreData` };
  const serial = serialOf(certificate);
  const traceable = certificate.statements.find(({ kind }) => kind === "traceability");
  const [condition] = certificate.conditions;
  const { issuer } = certificate;
  return [
    ...word("certificate", "Certificate number", certificate.uniqueIdentifier, {
      ...core,
      path: `${core.path}/uniqueIdentifier`,
    }),
    ...word("itemSerial", "Serial number", serial?.value ?? null, serial?.place ?? root),
    ...word("issuer", "Issued by", wordsOf(issuer.contact.name), issuer.contact.place),
    ...word("accreditation", "Accreditation", issuer.code, issuer.contact.place),
    ...word("performedOn", "Performed on", certificate.endPerformanceDate, {
      ...core,
      path: `${core.path}/endPerformanceDate`,
    }),
    ...word(
      "conditions",
      "Conditions",
      certificate.conditions.map(conditionText).join("\n"),
      condition?.place ?? root,
    ),
    ...word(
      "traceabilityStatement",
      "Statement of traceability",
      traceable ? wordsOf(traceable.declaration) : null,
      traceable?.place ?? root,
    ),
  ];
};

const overall = (offer: DccProposal): readonly Said[] => {
  if (!offer.overall) return [];
  const { expanded, coverageFactor, unit } = offer.overall;
  const u = offer.kind === "voltmeter" ? "findings.expandedMicrovolt" : "findings.expanded";
  return [
    figure(u, "Expanded uncertainty U", expanded),
    figure("findings.coverageFactor", "Coverage factor k", coverageFactor),
    ...(offer.kind === "reference"
      ? [
          {
            field: "findings.unit",
            label: "Unit of U",
            value: unit,
            written: unit === "celsius" ? "°C" : "µV",
            how: "",
            place: expanded.from,
          },
        ]
      : []),
  ];
};

const figures = (offer: DccProposal | null): readonly Said[] => {
  switch (offer?.kind) {
    case "reference":
      return [
        ...offer.rows.flatMap(({ celsius, deviationMicrovolt }, index) => [
          figure(`findings.points.${index}.celsius`, `Temperature of point ${index + 1}`, celsius),
          figure(
            `findings.points.${index}.deviationMicrovolt`,
            `Deviation of point ${index + 1}`,
            deviationMicrovolt,
          ),
        ]),
        ...overall(offer),
      ];
    case "voltmeter":
      return [
        ...offer.rows.flatMap(({ microvolt, correctionMicrovolt }, index) => [
          figure(`findings.corrections.${index}.microvolt`, `Indication of point ${index + 1}`, microvolt),
          figure(
            `findings.corrections.${index}.correctionMicrovolt`,
            `Correction of point ${index + 1}`,
            correctionMicrovolt,
          ),
        ]),
        ...overall(offer),
      ];
    default:
      return [];
  }
};

/** All that a digital certificate says for the form of a calibration, field by field. */
export const dccSays = (certificate: DccCertificate, offer: DccProposal | null): readonly Said[] => [
  ...papers(certificate),
  ...figures(offer),
];

type SaidParent = Pick<ParentInput, "kind" | "title" | "identity" | "certificate" | "route" | "below">;

const isFixedPoint = (words: string): boolean => /(fixed|freezing|melting|triple)[ -]point/i.test(words);

const linked = (report: DccReferral | null, below: number): readonly SaidParent[] =>
  report
    ? [
        {
          kind: isFixedPoint(wordsOf(report.referral)) ? "fixed-point" : "national-standard",
          title: wordsOf(report.referral) || report.uniqueIdentifier,
          identity: "",
          certificate: report.uniqueIdentifier,
          route: "nmi",
          below,
        },
        ...linked(report.linkedReport, below + 1),
      ]
    : [];

/** The standards the file names with their certificates, each with what stands behind it; offered, a person confirms. */
export const dccParents = ({ equipment }: DccCertificate): readonly SaidParent[] => {
  const parents: SaidParent[] = [];
  for (const { name, identifications, certificate } of equipment) {
    if (certificate === null) continue;
    parents.push({
      kind: "laboratory-standard",
      title: wordsOf(name),
      identity: identifications[0]?.value ?? "",
      certificate: certificate.uniqueIdentifier,
      route: "accredited",
    });
    parents.push(...linked(certificate.linkedReport, parents.length));
  }
  return parents.slice(0, 12);
};
