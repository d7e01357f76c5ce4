import type { LineOptions } from "../order/options";
import type { SetKind } from "../parts/decide-set";
import type { Said } from "./catalogue/message";
import type { CertificateContent } from "./content";
import type { CertificateParts } from "./parts";

/** One sensor, one set, one run of a certificate, with where it is stored. */
export type BundleMember = {
  readonly kind: SetKind;
  readonly parts: CertificateParts;
  readonly sensorId: string;
  readonly customerId: string;
  readonly runId: string;
  readonly evaluationId: string;
};

/** All that one certificate is composed from. */
export type CertificateBundle = {
  /** By sensor, set and run. At least one. */
  readonly members: readonly BundleMember[];
  /** Whose fields are the certificate's own: the last set of the first sensor. */
  readonly filedUnder: BundleMember;
  /** Sentences on measurements made more than once. */
  readonly repeats: readonly Said[];
  /** Sensors whose repeat's rule chose the earlier measurement. */
  readonly earlierCounts: readonly { readonly sensorId: string; readonly note: string }[];
  /** What the signatory has to look at. */
  readonly findings: readonly string[];
  readonly asks: {
    readonly budget: boolean;
    readonly evidence: boolean;
    readonly language?: LineOptions["language"];
    readonly form?: LineOptions["form"];
    readonly formAgreement?: string;
  };
  /** 7.8.8: the certificate it amends or takes the place of. */
  readonly amends?: NonNullable<CertificateContent["amends"]>;
  /** Everybody who had a hand in any of it. */
  readonly performerIds: readonly string[];
};
