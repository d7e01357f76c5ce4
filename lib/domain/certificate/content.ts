import { z } from "zod";
import { furtherContent } from "./further-content";

/**
 * What a certificate says, fixed at sign-off. Reported numbers are strings, already rounded; nothing downstream rounds
 * or recomputes. The content hash is SHA-256 over the RFC 8785 form of this object. Letters in comments are the items of
 * ISO/IEC 17025:2017, 7.8.2.1 (a–p) and 7.8.4.1.
 */

const text = z.string().min(1);

export const CertificateRow = z.strictObject({
  /** "measured" rows carry numbers; others carry the reason in `remark`. */
  state: z.enum(["measured", "invalid", "not-reached"]),
  /** Setpoint as the customer ordered it, in their unit, e.g. "1000 °C" or "600 °F". */
  setpoint: text,
  nominalCelsius: text,
  referenceCelsius: z.string(),
  emfMicrovolt: z.string(),
  deviationMicrovolt: z.string(),
  expandedMicrovolt: z.string(),
  /** Error, indication minus reference, °C. Correction is its negative. */
  errorCelsius: z.string(),
  correctionCelsius: z.string(),
  expandedCelsius: z.string(),
  coverageFactor: z.string(),
  /** Of the interval ± U: "0.9545". Left out on certificates from before a machine was to read it. */
  coverageProbability: z.string().optional(),
  /** Against the laboratory's accredited scope. Left out where none is stated, as on every earlier certificate. */
  scope: z.enum(["inside", "outside"]).optional(),
  /** Unrounded figures for drawing only: the plot shows, the strings state. */
  plot: z
    .strictObject({
      celsius: z.number(),
      errorCelsius: z.number(),
      expandedCelsius: z.number(),
      toleranceCelsius: z.number().nullable(),
    })
    .nullable(),
  conformity: z.strictObject({
    state: z.enum([
      "pass",
      "conditional-pass",
      "conditional-fail",
      "fail",
      "not-decidable",
      "no-tolerance-defined",
      "no-statement",
    ]),
    /** In °C, "± 4.0"; empty where none is defined or no statement is made. */
    tolerance: z.string(),
    /** p_c as printed, "> 99.9 %": both limits, u = U/k, Student's t with the row's ν_eff; empty where not stated. */
    probability: z.string(),
    /** In °C: half-width of the zone in which the rule says pass; left out where it is empty or none is defined. */
    acceptance: z.string().optional(),
  }),
  /** The same in °F, where it was ordered in °F: rounded once from the unrounded figures. Left out where it was not. */
  fahrenheit: z
    .strictObject({
      reference: text,
      error: text,
      correction: text,
      expanded: text,
      /** "± 2.7"; left out where none is defined or no statement is made. */
      tolerance: text.optional(),
      acceptance: text.optional(),
    })
    .optional(),
  remark: z.string(),
  /** p: obtained by an external provider, who is named under `externalResults`. Left out where it is our own. */
  isExternal: z.literal(true).optional(),
});
export type CertificateRow = z.infer<typeof CertificateRow>;

/** A standard or instrument the results rest on (7.8.4.1 c). */
export const CertificateStandard = z.strictObject({
  role: z.enum(["reference", "voltmeter", "scanner", "junction"]),
  description: text,
  tag: text,
  serial: text,
  calibrationCertificate: z.string(),
  issuer: z.string(),
  accreditation: z.string(),
  route: z.string(),
  performedOn: z.string(),
  dueOn: z.string(),
  /** Of the certificate's file, where the laboratory keeps it: which document is meant, and that it is unchanged. */
  documentSha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .optional(),
  /** p: an external provider's, not this laboratory's. */
  isExternal: z.literal(true).optional(),
});
export type CertificateStandard = z.infer<typeof CertificateStandard>;

/** A deviation function with its table of corrections where it was asked for. */
export const CertificateFunction = z.strictObject({
  degree: z.number().int().nonnegative(),
  isThroughZero: z.boolean(),
  /** D(t) in µV, t in °C; values as "-5.9e-2", from which the table's corrections follow again. */
  coefficients: z.array(z.strictObject({ power: z.number().int(), value: text, unit: text })).min(1),
  fromCelsius: text,
  toCelsius: text,
  /** Of the table. */
  unit: z.enum(["°C", "°F"]),
  coverageFactor: text,
  rows: z
    .array(z.strictObject({ temperature: text, correction: text, expanded: text, remark: z.string() }))
    .min(1),
  statements: z.array(text).min(1),
  /** Unrounded figures for drawing only. */
  plot: z.strictObject({
    curve: z.array(z.strictObject({ celsius: z.number(), value: z.number(), expanded: z.number() })).min(2),
    points: z.array(z.strictObject({ celsius: z.number(), value: z.number(), fitted: z.number() })).min(1),
  }),
});
export type CertificateFunction = z.infer<typeof CertificateFunction>;

/** What a certificate says of one item, one set and one run; the certificate's own fields say it of the first or only one. */
const Measured = {
  /** g */ item: z.strictObject({
    tag: text,
    serial: text,
    typeLetter: text,
    construction: text,
    protection: text,
    condition: text,
    /** Electrical checks at intake, one line each, with their figures and units. */
    checks: z.array(z.string()),
    /** Lot, roll and end, where the customer is audited by them. */
    material: text.optional(),
  }),
  /** h */ receivedOn: text,
  /** i */ performedFrom: text,
  performedTo: text,
  run: z.strictObject({
    number: text,
    furnace: text,
    configuration: text,
    place: text,
    immersion: z.string(),
    junctionCelsius: z.string(),
    /** Of the room, from the lowest to the highest recorded; left out where it was not. */
    room: z
      .strictObject({ celsius: z.array(text).min(1).max(2), percent: z.array(text).min(1).max(2).optional() })
      .optional(),
  }),
  /** 7.8.4.1 b: conditions that influence the results. */
  conditions: z.array(text).min(1),
  /** m */ rows: z.array(CertificateRow).min(1),
  standards: z.array(CertificateStandard).min(1),
};

/** A set of results of one sensor from one run, on a certificate that carries several. */
export const CertificateSet = z.strictObject({
  kind: z.enum(["as-received", "after-anneal"]),
  ...Measured,
  /** Deviations of this item or run alone. */
  deviations: z.array(text),
  performedBy: text,
  evidence: z.strictObject({
    engineVersion: text,
    inputsDigest: text,
    evaluation: z.number().int().positive(),
  }),
  function: CertificateFunction.optional(),
});
export type CertificateSet = z.infer<typeof CertificateSet>;

/** From the first set to the second, by setpoint (7.8.4.1 d). */
export const CertificateChange = z.strictObject({
  tag: text,
  rows: z.array(z.strictObject({ setpoint: text, changeCelsius: text, expandedCelsius: text })).min(1),
  statement: text,
});

/** Average and spread over the items of a lot, by setpoint. */
export const CertificateLot = z.strictObject({
  rows: z
    .array(
      z.strictObject({
        setpoint: text,
        items: z.number().int().min(2),
        averageErrorCelsius: text,
        smallestErrorCelsius: text,
        largestErrorCelsius: text,
        halfRangeCelsius: text,
      }),
    )
    .min(1),
  statement: text,
});

/** The uncertainty budget of one row: its lines by size, each as a standard uncertainty on the error in °C. */
export const CertificateBudget = z.strictObject({
  tag: text,
  setpoint: text,
  lines: z
    .array(z.strictObject({ label: text, distribution: text, effectCelsius: text, share: text }))
    .min(1),
  combinedCelsius: text,
  coverageFactor: text,
  degreesOfFreedom: text,
});

export const CertificateContent = z.strictObject({
  format: z.literal("emfolio-certificate"),
  version: z.literal(1),
  /** a */ title: text,
  /** d */ number: text,
  /** b, c */ laboratory: z.strictObject({
    name: text,
    addressLines: z.array(text).min(1),
    /** ISO 3166-1 alpha-2: a machine that reads the certificate cannot tell a country from the lines above. */
    countryCode: z
      .string()
      .regex(/^[A-Z]{2}$/)
      .optional(),
    contact: text,
    /** The laboratory's own words; empty where no result lies within its scope. */
    accreditation: z.string(),
    accreditationNumber: text.optional(),
    /** The image as the body gave it, kept by its hash. */
    accreditationMark: z
      .strictObject({
        sha256: z.string().regex(/^[0-9a-f]{64}$/),
        mediaType: z.enum(["image/png", "image/jpeg"]),
      })
      .optional(),
    /** Where the work was done, when not at the laboratory's address. */
    placeOfPerformance: text,
    /** Set for the demonstration laboratory: printed on every page. */
    demonstration: z.boolean(),
  }),
  /** e */ customer: z.strictObject({ name: text, addressLines: z.array(text).min(1), contact: text }),
  order: z.strictObject({ number: text, purchaseOrder: z.string() }),
  /** f */ method: z.strictObject({ name: text, description: text }),
  ...Measured,
  /** j */ issuedOn: text,
  /**
   * Where it speaks of several items, sets or runs: each of them, the certificate's own fields being those of the one
   * it is filed under. Left out where there is one, as on every certificate issued before there could be more.
   */
  sets: z.array(CertificateSet).min(2).optional(),
  changes: z.array(CertificateChange).min(1).optional(),
  lot: CertificateLot.optional(),
  /** Measured more than once: that, and which is reported. */
  repeats: z.array(text).min(1).optional(),
  budgets: z.array(CertificateBudget).min(1).optional(),
  /** That the evidence file can be had, where it was asked for. */
  evidenceStatement: text.optional(),
  /** What the sign beside a row outside the scope means; left out where no scope is stated. */
  scopeStatement: text.optional(),
  /** Left out where none was asked for, as in every certificate issued before it existed. */
  function: CertificateFunction.optional(),
  uncertaintyStatement: text,
  /** 7.8.6: set when a statement of conformity is made or was asked for. */
  conformity: z.strictObject({ specification: text, rule: text, risk: text, agreed: text }).nullable(),
  /** 7.8.4.1 c: how the results are metrologically traceable. */
  traceabilityStatement: text,
  /** 7.8.4.1 d */ adjustment: text,
  /** n */ deviations: z.array(text),
  /** k, p: said even where nothing applies. */
  sampling: text,
  externalResults: text,
  /** l and 7.8.4.3 */ statements: z.array(text).min(1),
  /** o; `at`: the moment of the signature, ISO 8601 in UTC, and `meaning`: what it means. Left out on earlier ones. */
  authorisedBy: z.strictObject({
    ...{ name: text, role: text, on: text },
    at: z.iso.datetime().optional(),
    meaning: text.optional(),
  }),
  performedBy: text,
  /** What the numbers were computed with, so that they can be computed again. */
  evidence: z.strictObject({
    engineVersion: text,
    inputsDigest: text,
    evaluation: z.number().int().positive(),
    exception: z.string(),
  }),
  ...furtherContent,
});
export type CertificateContent = z.infer<typeof CertificateContent>;
