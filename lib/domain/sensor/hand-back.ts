/** Why a sensor that is here leaves next. */
export type HandBack = "certified" | "unmeasured" | "cancelled";

export const handBackLabels: Readonly<Record<HandBack, string>> = {
  certified: "Certified",
  unmeasured: "Not measured: its hold ended so",
  cancelled: "Not measured: its order was cancelled",
};

type Facts = {
  readonly state: string;
  readonly orderState: string;
  /** With an external provider by its custody log: nobody can hand it over. */
  readonly isAway: boolean;
  /** What stands on it: open holds, and those that ended in "return unmeasured". */
  readonly holds: readonly { readonly isToBeReturned: boolean }[];
};

/**
 * Whether a sensor is to be handed back now, and why; null: it is not. One rule for every list that speaks of it; the
 * lists cut by the database ask the same of `data/sql/hand-back`. A cancelled order keeps nothing, whatever was asked of it.
 */
export const handBackOf = ({ state, orderState, isAway, holds }: Facts): HandBack | null => {
  if (isAway || (state !== "issued" && state !== "received")) return null;
  if (state === "received" && orderState === "cancelled") return "cancelled";
  if (orderState !== "cancelled" && holds.some(({ isToBeReturned }) => !isToBeReturned)) return null;
  if (state === "issued") return "certified";
  return holds.length > 0 ? "unmeasured" : null;
};
