import { number, optionalNumber, parseDecimal, rows, text } from "@/lib/web/form-fields";
import { parseFindings } from "./parse-findings";

const parentColumns = [
  "kind",
  "title",
  "identity",
  "issuer",
  "certificate",
  "route",
  "performedOn",
  "validUntil",
  "expanded",
  "unit",
  "coverageFactor",
  "below",
] as const;

const numberOf = (typed: string | undefined): number | undefined => (typed ? parseDecimal(typed) : undefined);

const parents = (data: FormData) =>
  rows(data, "parents", parentColumns).map(({ expanded, coverageFactor, below, ...row }) => ({
    ...row,
    expanded: numberOf(expanded),
    coverageFactor: numberOf(coverageFactor),
    below: numberOf(below),
  }));

const reasons = (data: FormData): Record<string, string> =>
  Object.fromEntries(
    [...data.keys()]
      .filter((name) => name.startsWith("reasons."))
      .map((name) => [name.slice("reasons.".length), text(data, name)]),
  );

type Uploaded = { readonly fileName: string; readonly bytes: Uint8Array } | null;

/** A browser sends an empty file where none was chosen. */
export const uploadedFile = async (data: FormData, name: string): Promise<Uploaded> => {
  const file = data.get(name);
  if (!(file instanceof File) || file.size === 0) return null;
  return { fileName: file.name.slice(0, 200), bytes: new Uint8Array(await file.arrayBuffer()) };
};

const document = (data: FormData, file: Uploaded) => {
  const documentId = text(data, "documentId");
  if (documentId !== "") return { kind: "digital", documentId, offer: number(data, "offer") };
  return file && { kind: "file", ...file };
};

/** A certificate as the form has it. */
export const parseCalibration = (data: FormData, file: Uploaded): Record<string, unknown> => {
  const route = text(data, "route");
  return {
    equipmentId: text(data, "equipmentId"),
    certificate: text(data, "certificate"),
    itemSerial: text(data, "itemSerial"),
    issuer: route === "in-house" ? text(data, "laboratory") : text(data, "issuer"),
    accreditation: text(data, "accreditation"),
    route,
    justification: text(data, "justification"),
    performedOn: text(data, "performedOn"),
    dueOn: text(data, "dueOn"),
    scale: text(data, "scale"),
    conditions: text(data, "conditions"),
    traceabilityStatement: text(data, "traceabilityStatement"),
    fromCelsius: optionalNumber(data, "fromCelsius"),
    toCelsius: optionalNumber(data, "toCelsius"),
    findings: parseFindings(data),
    parents: parents(data),
    document: document(data, file),
    reasons: reasons(data),
  };
};
