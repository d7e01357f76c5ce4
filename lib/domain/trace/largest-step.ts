import { type Chain, keyOf } from "./chain";

export type LargestStep = {
  /** Node the largest part comes in by. */
  readonly key: string;
  readonly role: string;
  readonly share: number;
};

/** Who brings a standard's share: all of one role together, since the budget takes the mean of several references. */
const standardRoles = ["reference", "voltmeter", "scanner", "junction", "lead"] as const;

/**
 * The step that brings the most uncertainty into one result: the measuring itself (furnace and sensor), or the standards
 * of one role. By parts of u_c², so that °C and µV compare. Null where the budget's parts are not known.
 */
export const largestStep = ({ nodes, edges }: Chain, resultKey: string): LargestStep | null => {
  const result = nodes.find((node) => keyOf(node) === resultKey);
  const shares = result?.facts.shares;
  if (!shares) return null;
  const own = edges.filter(({ from }) => from === resultKey);
  const run = own.find(({ role }) => role === "run");
  const used = [...own, ...edges.filter(({ from }) => from === run?.to)];
  const candidates = [
    ...(run ? [{ key: run.to, role: "run", share: run.sensitivity ?? 0 }] : []),
    ...standardRoles.flatMap((role) =>
      used
        .filter((edge) => edge.role === role)
        .map((edge) => ({ key: edge.to, role, share: shares[role] ?? 0 })),
    ),
  ];
  return candidates.reduce<LargestStep | null>(
    (largest, one) => (largest === null || one.share > largest.share ? one : largest),
    null,
  );
};
