/**
 * A digital calibration certificate (DCC, namespace https://ptb.de/dcc, versions 3.0 to 3.3) as read. Figures are kept
 * as the strings of the file, beside them as numbers; each part knows its place, so that a person sees what stands where.
 */

/** Element path from the root, repeated elements counted from 1, and the line of the file. */
export type DccPlace = { readonly path: string; readonly line: number };

/** The same words in several languages; `lang` is null where the file names none. */
export type DccText = readonly { readonly lang: string | null; readonly text: string }[];

export type DccIssuer = "manufacturer" | "calibrationLaboratory" | "customer" | "owner" | "other";

/** Whose number it is matters: the same item bears the maker's serial number and the customer's asset number. */
export type DccIdentification = {
  readonly issuer: DccIssuer;
  readonly value: string;
  readonly name: DccText;
  readonly refTypes: readonly string[];
  readonly place: DccPlace;
};

export type DccAddress = {
  readonly street: string | null;
  readonly streetNo: string | null;
  readonly postCode: string | null;
  readonly city: string | null;
  readonly state: string | null;
  readonly countryCode: string | null;
  readonly postOfficeBox: string | null;
  readonly further: DccText;
};

export type DccContact = {
  readonly name: DccText;
  readonly eMail: string | null;
  readonly phone: string | null;
  readonly fax: string | null;
  readonly link: string | null;
  readonly address: DccAddress | null;
  readonly place: DccPlace;
};

/** Another document named by its identifier and hash (hashType of the schema): a certificate that stands behind. */
export type DccReferral = {
  readonly referral: DccText;
  readonly uniqueIdentifier: string;
  /** The hash's procedure, e.g. SHA-256, and its value; nothing was compared with them. */
  readonly procedure: string;
  readonly value: string;
  readonly inValidityRange: boolean | null;
  readonly traceable: boolean | null;
  /** What in its turn stands behind it. */
  readonly linkedReport: DccReferral | null;
  readonly place: DccPlace;
};

type Spread = {
  /** One for each value of the column; null where the file says NaN. */
  readonly numbers: readonly (number | null)[];
  readonly written: readonly string[];
  /** As written, e.g. "normal"; empty where not given. */
  readonly distribution: readonly string[];
  readonly place: DccPlace;
};

/** Lists of one are spread over the column, as the D-SI means them. */
export type DccUncertainty =
  | (Spread & {
      readonly kind: "expanded";
      readonly coverageFactor: readonly (number | null)[];
      readonly coverageProbability: readonly (number | null)[];
    })
  | (Spread & { readonly kind: "standard" })
  | (Spread & {
      /** `numbers` are the standard uncertainty. */
      readonly kind: "interval";
      readonly from: readonly (number | null)[];
      readonly to: readonly (number | null)[];
      readonly coverageProbability: readonly (number | null)[];
    });

export type DccColumn = {
  /** D-SI unit of each value, e.g. `\milli\volt`. */
  readonly units: readonly string[];
  readonly written: readonly string[];
  readonly numbers: readonly (number | null)[];
  readonly labels: readonly string[];
  readonly dateTimes: readonly string[];
  readonly uncertainty: DccUncertainty | null;
  readonly place: DccPlace;
};

export type DccQuantity = {
  /** columns: the values; hybrid: the same values in several units, one column each; words: text instead of numbers. */
  readonly kind: "columns" | "hybrid" | "words";
  readonly refTypes: readonly string[];
  readonly name: DccText;
  readonly description: DccText;
  readonly columns: readonly DccColumn[];
  readonly words: readonly string[];
  readonly relativeUncertainty: DccColumn | null;
  readonly remarks: readonly DccStatement[];
  readonly id: string | null;
  readonly place: DccPlace;
};

/** Quantities that stand side by side: the rows of one are the rows of the others. */
export type DccTable = {
  readonly refTypes: readonly string[];
  readonly name: DccText;
  readonly description: DccText;
  readonly quantities: readonly DccQuantity[];
  readonly tables: readonly DccTable[];
  readonly dateTimes: readonly string[];
  readonly remarks: readonly DccStatement[];
  readonly place: DccPlace;
};

export type DccData = {
  readonly texts: readonly DccText[];
  readonly quantities: readonly DccQuantity[];
  readonly tables: readonly DccTable[];
};

export type DccStatement = {
  readonly kind: "traceability" | "conformity" | "recalibration" | "validity-range" | "other";
  readonly refTypes: readonly string[];
  readonly name: DccText;
  readonly declaration: DccText;
  readonly norms: readonly string[];
  readonly references: readonly string[];
  readonly convention: string | null;
  readonly traceable: boolean | null;
  readonly valid: readonly boolean[];
  /** pass, fail, conditionalPass, conditionalFail, noPass, noFail: one, or one for each value. */
  readonly conformity: readonly string[];
  readonly date: string | null;
  readonly period: string | null;
  readonly authority: DccContact | null;
  /** Ids of methods, software or equipment, one for each value where there are several: which was used for which. */
  readonly refIds: readonly string[];
  readonly data: DccData;
  readonly place: DccPlace;
};

/** For what a method, an equipment or a condition is said: since 3.0 for one result, since 3.3 for all of them. */
export type DccReach = "all-results" | "result" | "table" | "quantity";

export type DccMethod = {
  readonly name: DccText;
  readonly description: DccText;
  readonly norms: readonly string[];
  readonly references: readonly string[];
  readonly refTypes: readonly string[];
  readonly id: string | null;
  readonly reach: DccReach;
  readonly place: DccPlace;
};

/** What stands behind the results. */
export type DccEquipment = {
  readonly name: DccText;
  readonly manufacturer: DccText;
  readonly model: string | null;
  readonly identifications: readonly DccIdentification[];
  readonly certificate: DccReferral | null;
  readonly refTypes: readonly string[];
  readonly reach: DccReach;
  readonly id: string | null;
  readonly place: DccPlace;
};

export type DccCondition = {
  /** Told by refType where there is one, else by the words of its name. */
  readonly kind: "ambient" | "reference-junction" | "immersion" | "other";
  readonly name: DccText;
  readonly description: DccText;
  readonly status: string | null;
  readonly certificate: DccReferral | null;
  readonly data: DccData;
  readonly refTypes: readonly string[];
  readonly reach: DccReach;
  readonly place: DccPlace;
};

export type DccItem = {
  readonly name: DccText;
  readonly description: DccText;
  readonly manufacturer: DccText;
  readonly model: string | null;
  readonly identifications: readonly DccIdentification[];
  readonly quantities: readonly DccQuantity[];
  readonly subItems: readonly DccItem[];
  readonly id: string | null;
  readonly place: DccPlace;
};

export type DccPerson = {
  readonly name: DccText;
  readonly role: string | null;
  readonly isMainSigner: boolean;
  readonly place: DccPlace;
};

export type DccResult = {
  /** Name of the measurementResult it belongs to, and its own. */
  readonly group: DccText;
  readonly name: DccText;
  readonly description: DccText;
  readonly refTypes: readonly string[];
  readonly data: DccData;
  readonly place: DccPlace;
};

export type DccSoftware = { readonly name: DccText; readonly release: string; readonly place: DccPlace };

export type DccCertificate = {
  readonly uniqueIdentifier: string;
  readonly schemaVersion: string;
  /** True when the file was also held against the schema of its version; our own rules always apply. */
  readonly isCheckedBySchema: boolean;
  readonly countryCode: string;
  readonly languages: { readonly used: readonly string[]; readonly mandatory: readonly string[] };
  readonly identifications: readonly DccIdentification[];
  readonly receiptDate: string | null;
  readonly beginPerformanceDate: string;
  readonly endPerformanceDate: string;
  readonly issueDate: string | null;
  readonly performanceLocation: string;
  readonly change: {
    readonly typeOfChange: "amended" | "substituted";
    readonly replacedUniqueIdentifier: string;
    readonly place: DccPlace;
  } | null;
  readonly previousReport: DccReferral | null;
  readonly issuer: { readonly code: string | null; readonly contact: DccContact };
  readonly customer: DccContact;
  readonly responsible: readonly DccPerson[];
  readonly items: readonly DccItem[];
  readonly statements: readonly DccStatement[];
  readonly methods: readonly DccMethod[];
  readonly equipment: readonly DccEquipment[];
  readonly conditions: readonly DccCondition[];
  readonly results: readonly DccResult[];
  readonly software: readonly DccSoftware[];
  /** Words that speak of accreditation; whether it held on the day is for a person to find out. */
  readonly accreditationHints: readonly { readonly text: string; readonly place: DccPlace }[];
  /** Whether signatures are there. None was verified. */
  readonly signatures: {
    readonly xmlSignatures: readonly DccPlace[];
    readonly isSealDeclared: boolean;
    readonly isSignatureDeclared: boolean;
    readonly isTimeStampDeclared: boolean;
  };
  readonly embeddedFiles: readonly {
    readonly fileName: string;
    readonly mimeType: string;
    readonly place: DccPlace;
  }[];
  /** Parts that were seen and not interpreted (formulas, complex quantities, foreign XML): look at them in the file. */
  readonly setAside: readonly { readonly what: string; readonly place: DccPlace }[];
};
