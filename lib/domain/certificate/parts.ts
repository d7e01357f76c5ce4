import type { Outcome } from "@/lib/metrology/outcome";
import type { Checkpoint } from "../audit/checkpoint";
import type { EvaluatedFunction, EvaluatedPoint } from "../evidence/evaluation";
import type { DecisionRule } from "../evidence/schema";
import type { SetKind } from "../parts/decide-set";
import type { RoomFigures } from "../run/room-figures";
import type { SensorBuild } from "../sensor/build";
import type { Said } from "./catalogue/message";
import type { CertificateContent, CertificateStandard } from "./content";
import type { Anneal } from "./texts-of-parts";

/** What a certificate is composed from: plain facts, already loaded. Dates are "YYYY-MM-DD". */
export type CertificateParts = {
  readonly laboratory: {
    readonly name: string;
    readonly addressLines: readonly string[];
    /** ISO 3166-1 alpha-2. */
    readonly countryCode?: string;
    readonly contact: string;
    readonly accreditation: string;
    readonly accreditationNumber: string;
    /** `sha256`: lower-case hex. */
    readonly accreditationMark: {
      readonly sha256: string;
      readonly mediaType: "image/png" | "image/jpeg";
    } | null;
    readonly demonstration: boolean;
  };
  readonly customer: {
    readonly name: string;
    readonly addressLines: readonly string[];
    readonly contact: string;
  };
  readonly order: {
    readonly number: string;
    readonly purchaseOrder: string;
    readonly decisionRule: DecisionRule;
    readonly agreedBy: string;
    readonly agreedOn: string;
    /** Significant digits of U as ordered. */
    readonly uncertaintyDigits: number;
    readonly toleranceStandard: string;
    readonly toleranceClass: string;
    readonly temperatureUnit: "C" | "F";
    readonly setpoints: readonly { readonly typed: string; readonly celsius: number }[];
  };
  readonly sensor: {
    readonly tag: string;
    readonly serial: string;
    readonly typeLetter: string;
    readonly construction: string;
    readonly protection: string;
    /** "Lot 7, roll 12, first end"; left out where not stated. */
    readonly material?: Said;
  };
  readonly intake: {
    readonly receivedOn: string;
    readonly condition: string;
    readonly conditionNote: string;
    readonly loopResistanceOhm: number | null;
    readonly insulationMegaohm: number | null;
    readonly polarity: string;
    readonly typeCheck: string;
  };
  /** What the sensor is and went through before it came, as told at intake; left out: nobody was asked. */
  readonly build?: SensorBuild;
  /** Measurements of this sensor that are kept and not reported, with the reason. None: left out. */
  readonly setAside?: readonly { readonly run: string; readonly reason: string }[];
  /** 7.8.7: by who is authorised for them, in their own words. `on`: "YYYY-MM-DD". None: left out. */
  readonly opinions?: readonly {
    readonly text: string;
    readonly basis: string;
    readonly by: string;
    readonly on: string;
  }[];
  /** 7.4.3: what has to be said because the customer insisted, composed when the hold ended. None: left out. */
  readonly disclaimers?: readonly string[];
  /** By what the customer agreed that of its roll this end alone is reported; left out: both are, or it is of no roll. */
  readonly oneEndAgreed?: string;
  /** 7.8.4.1 d: annealed here, in the order of time. None: left out. */
  readonly anneals?: readonly Anneal[];
  /** The set these points belong to; left out: as received. */
  readonly set?: SetKind;
  /** Whether results of the other set stand on the same certificate. */
  readonly hasOtherSet?: boolean;
  /** Setpoints, °C, whose results stand on the same certificate from another run. */
  readonly elsewhereCelsius?: readonly number[];
  /** 7.8.2.1 c: where, if not at the laboratory's address. */
  readonly site?: string;
  /** 7.8.2.1 p: the external provider the results come from. */
  readonly provider?: string;
  readonly run: {
    readonly number: string;
    readonly furnace: string;
    readonly configuration: string;
    readonly characterisation: string;
    readonly place: string;
    readonly immersionMillimetre: number | null;
    readonly junctionCelsius: number;
    readonly performedFrom: string;
    readonly performedTo: string;
    readonly performedBy: string;
    readonly hasTypedReadings: boolean;
    readonly tipCheckRiseMicrovolt: number | null;
    /** Set aside at the gate of the run with a reason, in whole sentences. */
    readonly gateDeviations: readonly string[];
    /** As recorded at its start and its end; left out where it was not. */
    readonly room?: readonly RoomFigures[];
  };
  readonly evaluation: {
    readonly sequence: number;
    readonly engineVersion: string;
    /** Lower-case hex. */
    readonly inputsDigest: string;
    /** What the points were computed with; must be what was agreed. */
    readonly decisionRule: DecisionRule;
    readonly uncertaintyDigits: number;
  };
  /** In the order of the run's setpoints. */
  readonly points: readonly EvaluatedPoint[];
  /** As the run's evidence asks for it, or why there is none; null where it does not ask. */
  readonly deviationFunction: Outcome<EvaluatedFunction> | null;
  readonly standards: readonly StandardPart[];
};

/** `description` may still be a message of the catalogue. */
export type StandardPart = Omit<CertificateStandard, "description"> & { readonly description: Said };

/** What exists only once it is signed off. */
export type CertificateIssue = {
  readonly number: string;
  readonly issuedOn: string;
  readonly signatory: {
    readonly name: string;
    readonly role: string;
    /** The moment of the signature, ISO 8601 in UTC, and what it means. */
    readonly at?: string;
    readonly meaning?: string;
  };
  /** Said on the certificate where the performer signed off by policy; empty otherwise. */
  readonly exception: string;
  /** PUBLIC_URL/authenticity/TOKEN: where anyone can check it. */
  readonly authenticity?: NonNullable<CertificateContent["authenticity"]>;
  /** Where the audit log stood. */
  readonly log?: Checkpoint;
};
