import type { BundleMember, CertificateBundle } from "@/lib/domain/certificate/bundle";
import { composeBundle } from "@/lib/domain/certificate/compose-bundle";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import type { CertificateParts } from "@/lib/domain/certificate/parts";
import { demand } from "@/lib/domain/refusal";
import { inventedParts } from "@/tests/support/certificate-parts";
import { measuredPoint } from "@/tests/support/evaluated-point";

const anneal = { celsius: 1100, hours: 2, manner: "in a tube furnace in air", performedOn: "2026-03-03" };
export const order: CertificateParts["order"] = {
  ...inventedParts().order,
  temperatureUnit: "C",
  setpoints: [
    { typed: "600", celsius: 600 },
    { typed: "1000", celsius: 1000 },
  ],
};
export const member = (
  tag: string,
  kind: BundleMember["kind"],
  error: number,
  change: Parameters<typeof inventedParts>[0] = {},
): BundleMember => {
  const points = [600, 1000].map((celsius) =>
    measuredPoint({ sensor: tag, setpoint: String(celsius), type: "K", celsius, error, rule: "guarded" }),
  );
  const parts = inventedParts({ order, points, ...change });
  return {
    kind,
    parts: {
      ...parts,
      laboratory: { ...parts.laboratory, countryCode: "DE" },
      sensor: { ...parts.sensor, tag, serial: `S-${tag}` },
      set: kind,
    },
    sensorId: tag,
    customerId: "c",
    runId: `run ${kind}`,
    evaluationId: `evaluation ${kind}`,
  };
};
const issued = {
  number: "C-2026-0042",
  issuedOn: "2026-03-05",
  signatory: {
    name: "Odile Marchetti",
    role: "Signatory",
    at: "2026-03-05T09:12:00.000Z",
    meaning: "Reviewed and released.",
  },
  exception: "",
};
export const bundled = (
  members: readonly BundleMember[],
  change: Partial<CertificateBundle> = {},
): CertificateContent =>
  demand(
    composeBundle(
      {
        members,
        filedUnder: members.at(-1) as BundleMember,
        repeats: [],
        earlierCounts: [],
        findings: [],
        asks: { budget: false, evidence: false },
        performerIds: [],
        ...change,
      },
      issued,
    ),
  );
export const both = { anneals: [anneal], hasOtherSet: true };
