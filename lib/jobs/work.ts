import type { Sealer } from "@/lib/operations/certificate/sealer";
import type { Carrier } from "@/lib/operations/mail/deliver";

/** What the tasks need of the process they run in. */
export type Work = {
  readonly carrier: Carrier;
  /** Links in messages begin with it. */
  readonly publicUrl: string;
  /** Webhooks may lead to this machine and private networks: for a laboratory whose customers' programs are there. */
  readonly mayTellOwnNetwork?: boolean;
  /** Seals certificates. */
  readonly seal: Sealer;
  readonly clock: () => Date;
};
