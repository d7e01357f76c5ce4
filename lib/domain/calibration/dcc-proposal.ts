import type { DccPlace } from "./dcc-certificate";

/** A figure offered for a field of the form: what the file says, where, and what was done to it. A person confirms. */
export type Proposed = {
  readonly value: number;
  /** As written in the file, with its unit. */
  readonly written: string;
  /** Empty when the value was taken as it stands, else e.g. "× 10⁶, volt to µV". */
  readonly how: string;
  readonly from: DccPlace;
};

/** U of one row as the certificate states it. */
export type ProposedUncertainty = {
  readonly expanded: Proposed;
  readonly unit: "celsius" | "microvolt";
  /** Null where the file gives none. */
  readonly coverageFactor: Proposed | null;
  readonly coverageProbability: number | null;
  readonly distribution: string | null;
};

/** The one U and k of the form: the largest of the rows, offered only where every row has the same k and unit. */
export type ProposedOverall = {
  readonly expanded: Proposed;
  readonly unit: "celsius" | "microvolt";
  readonly coverageFactor: Proposed;
} | null;

type Offer<Row> = {
  /** "Table 1 of result …", for the person who chooses among several. */
  readonly title: string;
  readonly place: DccPlace;
  readonly rows: readonly (Row & { readonly uncertainty: ProposedUncertainty | null })[];
  readonly overall: ProposedOverall;
  /** What a person must know before confirming: conversions, what was given in kelvin, what is missing. */
  readonly remarks: readonly string[];
};

/** Shaped after the findings of `lib/domain/calibration/findings.ts`. */
export type DccProposal =
  | (Offer<{ readonly celsius: Proposed; readonly deviationMicrovolt: Proposed }> & {
      readonly kind: "reference";
      /** volt: the file states the deviation; emf: emf minus the reference function; kelvin: error times dE/dt. */
      readonly statedAs: "volt" | "emf" | "kelvin";
    })
  | (Offer<{ readonly microvolt: Proposed; readonly correctionMicrovolt: Proposed }> & {
      readonly kind: "voltmeter";
    })
  | (Offer<{ readonly celsius: Proposed; readonly errorCelsius: Proposed }> & {
      /** A thermometer that indicates temperature: error = indication − reference. */
      readonly kind: "thermometer";
    });

export type DccProposals = {
  readonly offers: readonly DccProposal[];
  /** Why a table gave no offer: which column was missing or not understood. */
  readonly reasons: readonly { readonly message: string; readonly place: DccPlace }[];
};
