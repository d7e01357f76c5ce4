/** Where a line is done and by whom: marked from the order to the certificate (ISO/IEC 17025:2017, 7.8.2.1 c and p). */

export const workPlaces = ["laboratory", "customer-site"] as const;
export type WorkPlace = (typeof workPlaces)[number];
export const workPlaceLabels: Readonly<Record<WorkPlace, string>> = {
  laboratory: "In the laboratory",
  "customer-site": "At the customer’s site",
};

export type LineMarks = {
  /** What the customer calls this group of sensors: "zone 3, load thermocouples"; "" = not named. */
  readonly groupName: string;
  readonly performedAt: WorkPlace;
  /** "" in the laboratory. */
  readonly siteAddress: string;
  /** The approved provider this line is subcontracted to; null = done here. */
  readonly providerId: string | null;
};

export const noMarks: LineMarks = {
  groupName: "",
  performedAt: "laboratory",
  siteAddress: "",
  providerId: null,
};

/** "Done at the customer’s site, 1 Street. Subcontracted to …"; "" for what is done here. */
export const marksText = (marks: LineMarks, providerName: string): string =>
  [
    marks.performedAt === "customer-site" && `Done at the customer’s site: ${marks.siteAddress}.`,
    marks.providerId !== null && `Subcontracted to ${providerName}.`,
  ]
    .filter(Boolean)
    .join(" ");
