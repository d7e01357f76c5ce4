import { z } from "zod";
import { optionalLine, requiredLine } from "../typed-text";
import { type Route, routes } from "./types";

export const parentKinds = ["laboratory-standard", "national-standard", "fixed-point", "si"] as const;
export type ParentKind = (typeof parentKinds)[number];

export const parentRoutes = [...routes, "realisation"] as const;
export type ParentRoute = (typeof parentRoutes)[number];

const optionalDay = z.union([z.literal(""), z.iso.date("Write a day as 2026-03-31.")]).default("");

/** One step behind a certificate, as the certificate names it. Its place in the list is its position, from 1. */
export const ParentInput = z.strictObject({
  kind: z.enum(parentKinds, "Choose what it is."),
  title: requiredLine("Write what it is, such as Copper freezing point.", 160),
  identity: optionalLine(120),
  issuer: optionalLine(200),
  certificate: optionalLine(120),
  route: z.enum(parentRoutes, "Choose how it reaches the SI."),
  performedOn: optionalDay,
  validUntil: optionalDay,
  expanded: z.number("Write U as a number.").positive("U is larger than nought.").optional(),
  unit: optionalLine(12),
  coverageFactor: z.number("Write k as a number.").min(1, "k is 1 or more.").optional(),
  /** Line of the one that stands on this; left out: the certificate itself does. */
  below: z
    .number("Write the number of a line above.")
    .int()
    .min(1, "Write the number of a line above.")
    .optional(),
});
export type ParentInput = z.output<typeof ParentInput>;

/** A step stands below one named before it, so that no circle can be written; a U has its unit. */
export const Parents = z
  .array(ParentInput)
  .max(12, "At most 12 lines.")
  .superRefine((parents, context) => {
    for (const [index, { below, expanded, unit }] of parents.entries()) {
      if (below !== undefined && below > index)
        context.addIssue({
          code: "custom",
          path: [index, "below"],
          message: "Write the number of a line above this one.",
        });
      if (expanded !== undefined && unit === "")
        context.addIssue({ code: "custom", path: [index, "unit"], message: "Write the unit of U." });
    }
  });

type DefaultParent = Pick<ParentInput, "kind" | "title" | "issuer" | "route" | "below">;

const si: Pick<DefaultParent, "kind" | "title" | "issuer" | "route"> = {
  kind: "si",
  title: "Kelvin, on the ITS-90",
  issuer: "",
  route: "realisation",
};

/** What usually stands behind a certificate of a route: offered in the form, never stored without a person's yes. */
export const defaultParents = (route: Route, issuer: string): readonly DefaultParent[] => {
  const national = (below?: number): DefaultParent => ({
    kind: "national-standard",
    title: "National standard",
    issuer: route === "nmi" ? issuer : "",
    route: "nmi",
    ...(below === undefined ? {} : { below }),
  });
  switch (route) {
    case "nmi":
      return [national(), { ...si, below: 1 }];
    case "accredited":
      return [
        {
          kind: "laboratory-standard",
          title: "Reference standard of the issuer",
          issuer,
          route: "accredited",
        },
        national(1),
        { ...si, below: 2 },
      ];
    case "in-house":
    case "other":
      return [];
  }
};
