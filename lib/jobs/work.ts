import type { Carrier } from "@/lib/operations/mail/deliver";

/** What the tasks need of the process they run in. */
export type Work = {
  readonly carrier: Carrier;
  /** Links in messages begin with it. */
  readonly publicUrl: string;
  readonly clock: () => Date;
};
