import type { XmlDocument } from "libxml2-wasm";
import { checkAgreement } from "./check-agreement";
import { checkColumns } from "./check-columns";
import { checkCore } from "./check-core";
import { checkCoverage } from "./check-coverage";
import { checkStructure } from "./check-structure";
import type { DccOutcome, DccProblem } from "./dcc-certificate";
import { checkBySchema, type DccSchemaFiles } from "./dcc-schema";
import { readCertificate } from "./read-certificate";
import { withXml } from "./with-xml";
import { dccNamespace, type XmlElement } from "./xml-element";

/** 3.0.0 to 3.3.0, and the release candidates nobody should issue with are not among them. */
const readableVersion = /^3\.(?:0|1|2)\.\d{1,2}$|^3\.3\.0$/;
const mostProblems = 50;

const refused = (problem: DccProblem): DccOutcome => ({ ok: false, problems: [problem] });

const notACertificate = (root: XmlElement): DccProblem | null => {
  const place = { path: root.path, line: root.line };
  if (root.name !== "digitalCalibrationCertificate" || root.namespace !== dccNamespace)
    return {
      ...place,
      code: "not-a-dcc",
      message: `The file begins with ${root.name.slice(0, 60)} and is no digital calibration certificate, which begins with digitalCalibrationCertificate in the namespace ${dccNamespace}. Choose the certificate's XML file.`,
    };
  const version = root.attributes.get("schemaVersion");
  if (version !== undefined && readableVersion.test(version)) return null;
  const found =
    version === undefined ? "does not say its schemaVersion" : `says schemaVersion "${version.slice(0, 40)}"`;
  return {
    ...place,
    code: "not-a-dcc",
    message: `The certificate ${found}; versions 3.0 to 3.3.0 are read here. Enter the certificate by hand, or ask the issuer for one of these versions.`,
  };
};

/** Two rules may find the same fault; the first told stays, and no place is told twice by the schema. */
const withoutRepeats = (own: readonly DccProblem[], schema: readonly DccProblem[]): readonly DccProblem[] => {
  const told = new Set(own.map(({ path }) => path));
  return [...own, ...schema.filter(({ path }) => !told.has(path))]
    .sort((one, other) => one.line - other.line)
    .slice(0, mostProblems);
};

const readTree = (
  root: XmlElement,
  document: XmlDocument,
  schema: DccSchemaFiles | undefined,
): DccOutcome => {
  const foreign = notACertificate(root);
  if (foreign) return refused(foreign);
  const version = root.attributes.get("schemaVersion") ?? "";
  const verdict = checkBySchema(schema, version, root, document);
  const own = [
    ...checkStructure(root),
    ...checkCore(root),
    ...checkColumns(root),
    ...checkAgreement(root),
    ...(version === "3.3.0" ? checkCoverage(root) : []),
  ];
  const [first, ...others] = withoutRepeats(own, verdict.kind === "held" ? verdict.problems : []);
  if (first) return { ok: false, problems: [first, ...others] };
  return { ok: true, certificate: readCertificate(root, verdict.kind === "held") };
};

/**
 * Reads a digital calibration certificate, DCC 3.0 to 3.3: bytes in, the whole certificate or the list of all that is
 * wrong out. Our own rules always apply; given schema files, the schema of the version too. Never throws for what is
 * in the file, fetches nothing, and keeps nothing.
 */
export const readDcc = (bytes: Uint8Array, schema?: DccSchemaFiles): DccOutcome =>
  withXml(bytes, refused, (root, document) => readTree(root, document, schema));
