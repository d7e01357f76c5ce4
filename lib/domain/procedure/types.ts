export const revisionStates = ["draft", "current", "withdrawn"] as const;
export type RevisionState = (typeof revisionStates)[number];

/** One revision as stored; moments as ISO text. `recordedById` null: it came with the platform. */
export type ProcedureRevision = {
  readonly id: string;
  readonly key: string;
  readonly title: string;
  readonly revision: number;
  readonly state: RevisionState;
  /** Canonical JSON text, as runs keep it. */
  readonly budgetInputs: string;
  readonly gatePolicy: string;
  readonly change: string;
  readonly verification: string;
  readonly recordedById: string | null;
  readonly recordedAt: string;
  readonly currentFrom: string | null;
  readonly currentById: string | null;
  readonly withdrawnAt: string | null;
  readonly version: number;
};

/** How a record and a certificate name it. */
export const revisionName = ({ title, revision }: Pick<ProcedureRevision, "title" | "revision">): string =>
  `${title}, revision ${revision}`;
