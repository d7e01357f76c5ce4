/** What was recorded after the chain was frozen. It raises a flag beside the chain and alters nothing in it. */
export type LaterChange =
  | { readonly kind: "equipment-state"; readonly tag: string; readonly state: string }
  | {
      readonly kind: "calibrated-again";
      readonly tag: string;
      readonly certificate: string;
      readonly on: string;
      /** accepted | rejected | undecided */
      readonly standing: string;
    }
  | { readonly kind: "rejected"; readonly tag: string; readonly certificate: string; readonly on: string }
  | {
      readonly kind: "provider-suspended";
      readonly tag: string;
      readonly certificate: string;
      readonly provider: string;
    };

export type LaterFlag = {
  readonly kind: LaterChange["kind"];
  /** Tag of the standard it is about. */
  readonly tag: string;
  readonly text: string;
};

const textOf = (change: LaterChange): string => {
  switch (change.kind) {
    case "equipment-state":
      return `is ${change.state.replaceAll("-", " ")} now`;
    case "calibrated-again":
      return `was calibrated again on ${change.on} (${change.certificate}${change.standing === "accepted" ? "" : `, ${change.standing === "rejected" ? "rejected" : "not accepted yet"}`}): compare the two`;
    case "rejected":
      return `its calibration ${change.certificate} was rejected on ${change.on}: see what stands on it`;
    case "provider-suspended":
      return `${change.provider}, who issued ${change.certificate}, is suspended as a provider now`;
  }
};

export const laterFlags = (changes: readonly LaterChange[]): readonly LaterFlag[] =>
  changes.map((change) => ({ kind: change.kind, tag: change.tag, text: textOf(change) }));
