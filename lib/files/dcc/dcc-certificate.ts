import type { DccCertificate, DccPlace } from "@/lib/domain/calibration/dcc-certificate";

/** Why a certificate is refused: where, what, and the remedy in the same message. */
export type DccProblem = DccPlace & {
  readonly code:
    | "too-large" // more than may be read
    | "not-xml" // not well-formed, or no text at all
    | "forbidden" // document type, entities, nesting without end: refused before anything is read
    | "not-a-dcc" // XML, but another kind, or a version not read here
    | "schema" // the schema of its version says no
    | "structure" // an element is missing, unknown, or there too often
    | "value" // a date, code, number, unit or word that cannot be
    | "length" // lists that belong together have different lengths
    | "reference" // a refId that leads nowhere, an id given twice
    | "contradiction"; // two statements of the file exclude each other
  readonly message: string;
};

/** `certificate` and its parts are described in `lib/domain/calibration/dcc-certificate.ts`, where pages may see them. */
export type DccOutcome =
  | { readonly ok: true; readonly certificate: DccCertificate }
  | { readonly ok: false; readonly problems: readonly [DccProblem, ...DccProblem[]] };

/** As one sentence for the person at the screen. */
export const describeDccProblem = (problem: DccProblem): string => {
  const place = [problem.line > 0 ? `line ${problem.line}` : "", problem.path].filter((part) => part !== "");
  if (place.length === 0) return problem.message;
  const text = place.join(", ");
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}: ${problem.message}`;
};
