/** What a remark can speak of; each has its place on the page of a result. */
export const commentPlaces = [
  "error",
  "uncertainty",
  "emf",
  "reference",
  "window",
  "conformity",
  "standard",
  "draft",
] as const;
export type CommentPlace = (typeof commentPlaces)[number];

export const commentPlaceLabels: Readonly<Record<CommentPlace, string>> = {
  error: "the error",
  uncertainty: "U and its budget",
  emf: "the emf",
  reference: "the references' temperature",
  window: "the readings in the window",
  conformity: "the conformity",
  standard: "the standards",
  draft: "the draft certificate",
};
