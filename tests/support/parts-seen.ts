import { rederiveCertificates } from "@/lib/commands/rederive/certificates";
import { rederiveChains } from "@/lib/commands/rederive/chains";
import { inScope } from "@/lib/data/in-scope";
import { CertificateContent } from "@/lib/domain/certificate/content";
import type { MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import type { RunOptions } from "./build-run";
import { issueAllNow } from "./issue-now";

/** What tests of work in parts look at: stored contents, states, and whether all of it derives again. */

const laboratory = { kind: "laboratory" } as const;

/** By guarded acceptance, as the points were made. */
const stateAt = (size: number, { acceptanceCelsius, tolerance, state }: MeasuredPoint["conformity"]) => {
  if (acceptanceCelsius === null || tolerance === null) return state;
  if (size <= acceptanceCelsius) return "pass";
  if (size <= tolerance.celsius) return "conditional-pass";
  return size <= 2 * tolerance.celsius - acceptanceCelsius ? "conditional-fail" : "fail";
};

export const shift =
  (celsius: number): NonNullable<RunOptions["change"]> =>
  (point) => {
    if (point.state !== "measured") return point;
    const errorCelsius = point.errorCelsius + celsius;
    const printed = { errorCelsius: errorCelsius.toFixed(1), correctionCelsius: (-errorCelsius).toFixed(1) };
    const conformity = { ...point.conformity, state: stateAt(Math.abs(errorCelsius), point.conformity) };
    return { ...point, errorCelsius, conformity, printed: { ...point.printed, ...printed } };
  };

export const contentOf = (id: string) =>
  inScope(laboratory, async (tx) =>
    CertificateContent.parse(JSON.parse((await tx.certificate.findUniqueOrThrow({ where: { id } })).content)),
  );
export const stateOf = (id: string) =>
  inScope(laboratory, async (tx) => (await tx.sensor.findUniqueOrThrow({ where: { id } })).state);
export const runState = (id: string) =>
  inScope(laboratory, async (tx) => (await tx.run.findUniqueOrThrow({ where: { id } })).state);
export const rederived = async () => {
  await issueAllNow();
  await rederiveCertificates(new Map());
  return rederiveChains();
};
