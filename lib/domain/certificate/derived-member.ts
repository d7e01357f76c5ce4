import type { BundleMember } from "./bundle";
import type { CertificateParts } from "./parts";

/** What figures that rest on several results need of each member: of a certificate, or of its evidence computed again. */
export type DerivedMember = Pick<BundleMember, "kind" | "sensorId"> & {
  readonly parts: Pick<CertificateParts, "points"> & {
    readonly order: Pick<CertificateParts["order"], "setpoints" | "temperatureUnit">;
    readonly sensor: Pick<CertificateParts["sensor"], "tag">;
  };
};
