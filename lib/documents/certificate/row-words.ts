import type { CertificateRow } from "@/lib/domain/certificate/content";
import { outsideScopeSign } from "@/lib/domain/certificate/texts";
import { type Said, together, type Words } from "./words";

/** Beside what an external provider measured (7.8.2.1 p). */
export const externalSign = "‡";

/** What is said in place of figures where a row has none. */
export const insteadOf =
  (words: Words) =>
  (row: CertificateRow): Said | null =>
    row.state === "measured"
      ? null
      : together(": ", words.caption(`state.${row.state}`), words.sentence(row.remark));

/** A result outside the scope, or not our own, carries its sign wherever it stands. */
export const signedSetpoint = (row: CertificateRow): string =>
  [
    row.setpoint,
    ...(row.scope === "outside" ? [outsideScopeSign] : []),
    ...(row.isExternal ? [externalSign] : []),
  ].join(" ");
