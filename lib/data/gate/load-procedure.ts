import { defaultGatePolicy } from "@/lib/domain/gate/default-policy";
import type { GatePlan } from "@/lib/domain/gate/plan";
import { GatePolicy } from "@/lib/domain/gate/policy";
import type { Tx } from "../in-scope";

/** What a procedure says differently from the gate as it comes; what it leaves out stands as it comes. */
const policyOf = (stored: string): GatePolicy =>
  GatePolicy.parse({ ...defaultGatePolicy, ...(JSON.parse(stored) as object) });

/** The procedure a run follows and what its gate asks; a run with figures of its own follows none of ours. */
export const loadProcedure = async (
  tx: Tx,
  revisionId: string | null,
): Promise<{ readonly procedure: GatePlan["procedure"]; readonly policy: GatePolicy }> => {
  if (revisionId === null) return { procedure: null, policy: defaultGatePolicy };
  const { procedure, revision, state, gatePolicy } = await tx.procedureRevision.findUniqueOrThrow({
    where: { id: revisionId },
    include: { procedure: { select: { title: true } } },
  });
  return {
    procedure: {
      name: `${procedure.title}, revision ${revision}`,
      state: state as "draft" | "current" | "withdrawn",
    },
    policy: policyOf(gatePolicy),
  };
};
